import { describe, expect, it } from 'vitest';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { buildChart } from '../../../src/core/chart/build-chart';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { FEELS } from '../../../src/core/feels/feels';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';

/** Starts of the band in a bar, in beats from its beginning, with the last moment anything sounds. */
const heardIn = (text: string, feel: (typeof FEELS)[number], bar: number) => {
  const meter = feel.meter ?? '4/4';
  const { chart } = readChart(text, { tonic: 'G', mode: 'major', meter, title: 'Stops' });
  const style = {
    ...DEFAULT_SETTINGS.style,
    feel: feel.id,
    bass: feel.bass,
    chords: feel.chords,
    kit: feel.kit,
  };
  const plan = { ...DEFAULT_SETTINGS.plan, countInBars: 0 as const, intro: 'none' as const, choruses: null };
  const section = sectionAt({ chart, style, tempo: asBpm(feel.tempo.usual), plan }, 0);
  const { at = 0, length = 0 } = chart.bars[bar] ?? {};
  const band = (section?.score.events ?? []).filter(({ part }) => part !== 'click');
  const within = band.filter((event) => event.at >= at && event.at < at + length);
  const until = Math.max(
    at,
    ...band.filter((event) => event.at < at + length).map((event) => event.at + event.length),
  );
  return {
    starts: within.map((event) => (event.at - at) / chart.meter.beatTicks),
    parts: new Set(within.map(({ part }) => part)),
    sounds: (until - at) / chart.meter.beatTicks,
  };
};

describe.each(FEELS.map((feel) => [feel.id, feel] as const))('in %s', (_, feel) => {
  it('the band rests where the chart says N.C.', () => {
    const { starts, sounds } = heardIn('G7 | N.C. | C7 | D7', feel, 1);
    expect(starts).toEqual([]);
    expect(sounds).toBeLessThanOrEqual(0);
  });

  it('strikes once, all together, where a bar is one stroke', () => {
    const { starts, parts, sounds } = heardIn('G7 | C7! | N.C. | D7', feel, 1);
    expect(starts.every((beat) => beat < 0.2)).toBe(true);
    expect([...parts].toSorted()).toEqual(['bass', 'chords', 'drums']);
    expect(sounds).toBeLessThanOrEqual(1.2);
  });

  it('rests within a bar', () => {
    const { starts } = heardIn('G7 | C7 N.C. | C7 | D7', feel, 1);
    expect(starts.length).toBeGreaterThan(0);
    expect(starts.every((beat) => beat < 2)).toBe(true);
  });
});

it('ends in the key of the section it ends in', () => {
  const [feel] = FEELS;
  const chart = buildChart({ form: 'strains', key: asPitchClass(7), meter: '4/4' });
  expect(
    chart.bars
      .map(({ place, key }) => `${place?.section} ${key?.tonic ?? '-'}`)
      .filter((_, i) => i % 12 === 0),
  ).toEqual(['A -', 'B -', 'B -', 'Trio C', 'Trio C']);
  const { style, plan: usual } = DEFAULT_SETTINGS;
  const plan = {
    ...usual,
    countInBars: 0 as const,
    intro: 'none' as const,
    choruses: 1,
    ending: 'held' as const,
  };
  const program = { chart, style: { ...style, feel: feel.id }, tempo: asBpm(100), plan };
  const last = sectionAt(program, 0)?.chart.bars.at(-1)?.chords[0]?.chord.symbol;
  expect([last, sectionAt(program, 1)?.chart.bars[0]?.chords[0]?.chord.symbol]).toEqual(['G7', 'C']);
});
