/** What the band makes of long and odd forms, as a band leader reads it in printed choruses. Common practice, no source. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chorusShapes } from '../../../src/core/arranger/arc';
import type { Section } from '../../../src/core/arranger/program';
import type { Chart } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { phrasesOf } from '../../../src/core/chart/phrases';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { FEEL_IDS, feelOf } from '../../../src/core/feels/feels';
import { ideasOf } from '../../../src/core/players/comping-plan';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';
import { createRandom } from '../../../src/core/theory/random';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';
import { testChart, testPlan, testProgram, testStyle } from '../../helpers/test-charts';

const typed = (text: string): Chart => {
  const { chart } = readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Typed' });
  if (chart === null) throw new Error('The test’s chart cannot be read');
  return chart;
};

/** Two verses of eight bars, a bridge and a verse. */
const AABA = typed(
  'Order: A A B A\n[A]\nG7 | C7 | G7 | G7 | C7 | D7 | G7 | D7\n[B]\nC7 | C7 | G7 | E7 | A7 | A7 | D7 | D7',
);
/** Sections of two, six and five bars, two and four chords in a bar. */
const ODD = typed(
  '[Intro]\nG7 | D7\n[Verse]\nG7 | G7 C7 | G7 | Em7 Am7 | D7 | G7\n[Bridge]\nC7 | F7 | C7 | G7 | Cmaj7 Am7 Dm7 G7',
);

const share = (flags: readonly boolean[]): number => flags.filter(Boolean).length / flags.length;

describe('the drums', () => {
  it.each([
    ['sixteen bars', testChart('sixteen-a')],
    ['verses and a bridge', AABA],
    ['sections of two, six and five bars', ODD],
  ])('fill where phrases end, and most at the ends of sections: %s', (_, { bars }) => {
    const places = phrasesOf(bars);
    const plan = testPlan({ arc: 'breathe' });
    const filled = { nothing: [] as boolean[], phrase: [] as boolean[], stretch: [] as boolean[] };
    for (let seed = 0; seed < 24; seed += 1) {
      for (const chorus of [1, 2, 4, 5]) {
        const shapes = chorusShapes({ style: testStyle('shuffle', { seed }), plan }, chorus, bars, false);
        for (const [bar, { fill }] of shapes.entries()) {
          const ends = places[bar]?.ends ?? 'nothing';
          if (ends !== 'chorus') filled[ends].push(fill !== 'none');
        }
      }
    }
    expect(share(filled.nothing)).toBeLessThan(0.06);
    if (filled.phrase.length > 0) expect(share(filled.phrase)).toBeGreaterThan(0.2);
    expect(share(filled.stretch)).toBeGreaterThan(0.4);
    expect(share(filled.stretch)).toBeLessThan(0.6);
  });
});

it('sections of one name have the same rhythms for the chords, and a bridge has others', () => {
  const shapes = chorusShapes(
    { style: testStyle('shuffle'), plan: testPlan({ arc: 'breathe' }) },
    1,
    AABA.bars,
    false,
  );
  const book = [0, 1, 2].map((level) => Array.from({ length: 9 }, (_, i) => `${level}${i}`));
  for (let seed = 0; seed < 20; seed += 1) {
    const random = createRandom(seed);
    const [low = [], middle = [], high = []] = book;
    const choose = (texts: readonly string[]) => texts[Math.floor(random() * texts.length)] ?? '';
    const ideas = ideasOf(random, shapes, [low, middle, high], choose);
    const [first, second, bridge, last] = [0, 8, 16, 24].map((bar) => ideas.slice(bar, bar + 8));
    expect(second).toEqual(first);
    expect(last).toEqual(first);
    expect(bridge).not.toEqual(first);
  }
});

const charts = fc.oneof(
  fc
    .constantFrom(...FORM_IDS)
    .map((form) => (key: number, meter: '4/4' | '12/8') => testChart(form, key, meter)),
  fc.constantFrom(AABA, ODD).map((chart) => () => chart),
);

const sections = fc
  .record({
    feel: fc.constantFrom(...FEEL_IDS),
    chart: charts,
    key: fc.integer({ min: 0, max: 11 }),
    seed: fc.nat(1_000_000),
    chorus: fc.constantFrom(0, 1, 2, 5),
  })
  .map(({ feel, chart, key, seed, chorus }) =>
    sectionOf(
      testProgram(feel, {
        chart: chart(key, feelOf(feel).meter === '12/8' ? '12/8' : '4/4'),
        style: { seed, second: 'organ' },
        plan: { arc: 'breathe', turnarounds: 'varied' },
      }),
      chorus,
    ),
  );

const longestRun = (prints: readonly string[]): number => {
  let [longest, run] = [0, 0];
  for (const [i, print] of prints.entries()) {
    run = print !== '' && print === prints[i - 1] ? run + 1 : 1;
    longest = Math.max(longest, run);
  }
  return longest;
};

const printsOf = (section: Section, part: 'bass' | 'chords', pitches: boolean): readonly string[] =>
  section.chart.bars.map((_, bar) =>
    [
      ...new Set(inBar(section, bar, part).map(({ at, pitch }) => (pitches ? `${at}:${pitch}` : `${at}`))),
    ].join(),
  );

const tries = { numRuns: soakRuns(20_000) };

it(
  'no bar of the bass stands four times in a row, and no rhythm of the chords five times, however long a chord lasts',
  () => {
    fc.assert(
      fc.property(sections, (section) => {
        expect(longestRun(printsOf(section, 'bass', true))).toBeLessThan(4);
        // Three beats to the bar, and bars whose chords change with the beats, leave fewer rhythms.
        const single = section.chart.bars.every(({ chords }) => chords.length === 1);
        if (single) expect(longestRun(printsOf(section, 'chords', false))).toBeLessThan(5);
      }),
      tries,
    );
  },
  SOAK_TIMEOUT,
);

/** Bars that everybody begins at once: a chord that is held, bass and kick. */
const beginsAtOnce = (section: Section): readonly string[] =>
  section.chart.bars.map((_, bar) => {
    const first = (part: 'chords' | 'bass' | 'drums') =>
      inBar(section, bar, part).filter(({ at }) => at === 0);
    const held = first('chords').some(({ length }) => length >= section.chart.meter.beatTicks);
    const kick = first('drums').some(({ pitch }) => pitch === DRUM_KEYS.kick);
    return held && kick && first('bass').length > 0 ? 'at once' : '';
  });

it(
  'chords that are held do not begin every bar together with bass and kick',
  () => {
    fc.assert(
      fc.property(sections, (section) => {
        const single = section.chart.bars.every(({ chords }) => chords.length === 1);
        if (single) expect(longestRun(beginsAtOnce(section))).toBeLessThanOrEqual(6);
      }),
      tries,
    );
  },
  SOAK_TIMEOUT,
);

it(
  'chords keep three semitones above the bass, and no chord is held into another in its bar',
  () => {
    fc.assert(
      fc.property(sections, (section) => {
        const bass = partOf(section, 'bass');
        for (const note of [...partOf(section, 'chords'), ...partOf(section, 'second')]) {
          const low = bass.filter(
            ({ at, length, pitch }) =>
              note.pitch - pitch < 3 &&
              Math.min(note.at + note.length, at + length) - Math.max(note.at, at) > 30,
          );
          expect(low).toEqual([]);
        }
        const { beatTicks } = section.chart.meter;
        for (const { chords } of section.chart.bars) {
          for (const [i, { at, chord }] of chords.entries()) {
            if (i === 0 || chord.symbol === chords[i - 1]?.chord.symbol) continue;
            const over = partOf(section, 'chords').filter(
              (note) => note.at < at - beatTicks * 0.6 && note.at + note.length > at + 10,
            );
            expect(over).toEqual([]);
          }
        }
      }),
      tries,
    );
  },
  SOAK_TIMEOUT,
);
