/** What a musician stumbled over when choruses of every feel were read bar by bar. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Section } from '../../../src/core/arranger/program';
import { FEEL_IDS, feelOf } from '../../../src/core/feels/feels';
import { withoutLongLeaps } from '../../../src/core/players/bass-register';
import { COMPING_REGISTER, voicingsOf } from '../../../src/core/players/voicing';
import { partOf, sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

const choruses = (feel: (typeof FEEL_IDS)[number], form: 'standard' | 'minor-a' | 'minor-b'): Section[] =>
  [11].flatMap((seed) => {
    const chart = testChart(form, 7, feelOf(feel).meter ?? '4/4');
    const program = testProgram(feel, { chart, style: { seed }, plan: { arc: 'breathe' } });
    return [1, 2].map((index) => sectionOf(program, index));
  });

describe('chords', () => {
  const stepsOf = (pitches: readonly number[], root: number) =>
    pitches.map((pitch) => (pitch - root + 120) % 12);

  const strokesOf = (section: Section) => {
    const strokes = new Map<number, number[]>();
    for (const { at, pitch } of partOf(section, 'chords'))
      strokes.set(at, [...(strokes.get(at) ?? []), pitch]);
    return [...strokes].map(([at, pitches]) => ({ at, pitches: pitches.toSorted((a, b) => a - b) }));
  };

  it('never crowd fifth, thirteenth and seventh of a dominant together', () => {
    for (const { chord } of testChart('jazz-bebop').bars.flatMap(({ chords }) => chords)) {
      if (chord.quality !== '7') continue;
      const voicings = voicingsOf(chord, 'rich', COMPING_REGISTER);
      expect(voicings.length).toBeGreaterThan(5);
      for (const pitches of voicings) {
        const steps = stepsOf(pitches, chord.root);
        expect(steps.includes(7) && steps.includes(9) && steps.includes(10)).toBe(false);
      }
    }
  });

  it.each(FEEL_IDS)(
    'of %s colour the five chord of a minor key from that key, not from the major',
    (feel) => {
      let struck = 0;
      for (const section of (['minor-a', 'minor-b'] as const).flatMap((form) => choruses(feel, form))) {
        const spans = section.chart.bars.flatMap(({ chords }) => chords);
        const strokes = strokesOf(section);
        for (const [i, { at, pitches }] of strokes.entries()) {
          const span = spans.findLast((each) => each.at <= at + 1) ?? spans[0];
          const isFive = span.chord.quality === '7' && (span.chord.root - section.chart.key + 12) % 12 === 7;
          // A push belongs to the chord that it anticipates, a slide is a semitone below what it slides into.
          const pushed = span.at + span.length - at < section.chart.meter.beatTicks;
          const slides = pitches.join() === strokes[i + 1]?.pitches.map((pitch) => pitch - 1).join();
          if (!isFive || pushed || slides) continue;
          struck += 1;
          for (const step of stepsOf(pitches, span.chord.root)) expect([2, 9]).not.toContain(step);
        }
      }
      expect(struck).toBeGreaterThan(3);
    },
  );
});

describe('a bass line', () => {
  it('is taken an octave nearer where it would leap further than an octave, and left alone elsewhere', () => {
    const line = (...pitches: number[]) => pitches.map((pitch) => ({ pitch }));
    const pitches = (...given: number[]) => withoutLongLeaps(line(...given)).map(({ pitch }) => pitch);
    expect(pitches(38, 45, 50, 31, 38)).toEqual([38, 45, 38, 31, 38]);
    expect(pitches(31, 43, 31, 55)).toEqual([31, 43, 43, 55]);
    expect(pitches(38, 40, 41, 43)).toEqual([38, 40, 41, 43]);
  });

  it.each(FEEL_IDS)('of %s leaps further than an octave hardly ever', (feel) => {
    const sections = choruses(feel, 'standard');
    let [leaps, all] = [0, 0];
    for (const section of sections) {
      const line = partOf(section, 'bass').map(({ pitch }) => pitch);
      all += line.length;
      leaps += line.filter((pitch, i) => i > 0 && Math.abs(pitch - line[i - 1]) > 12).length;
    }
    expect(leaps / all).toBeLessThan(0.005);
  });
});
