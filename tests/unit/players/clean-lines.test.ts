/** What a musician stumbled over when choruses of every feel were read bar by bar. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Section } from '../../../src/core/arranger/program';
import type { FormId } from '../../../src/core/chart/forms';
import { romanChord } from '../../../src/core/chart/roman';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import { approachesTo, withoutLongLeaps } from '../../../src/core/players/bass-register';
import { chordShape } from '../../../src/core/players/chord-scale';
import { COMPING_REGISTER, voicingsOf } from '../../../src/core/players/voicing';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { inSoak } from '../../helpers/soak';
import { testChart, testProgram } from '../../helpers/test-charts';

const choruses = (feel: (typeof FEEL_IDS)[number], form: FormId): Section[] =>
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

describe('strokes of chords', () => {
  it.each(FEEL_IDS)('of %s are no single notes', (feel) => {
    const sections = inSoak<FormId>(['standard', 'minor-b'], ['standard']).flatMap((form) =>
      choruses(feel, form),
    );
    for (const second of ['organ', 'guitar'] as const) {
      const style = { seed: 3, second, chords: 'guitar' } as const;
      sections.push(sectionOf(testProgram(feel, { style, plan: { arc: 'breathe' } }), 2));
    }
    for (const section of sections) {
      for (const part of ['chords', 'second'] as const) {
        const counts = new Map<number, number>();
        for (const { at } of partOf(section, part)) counts.set(at, (counts.get(at) ?? 0) + 1);
        expect([...counts].filter(([, count]) => count < 2)).toEqual([]);
      }
    }
  });

  /** Bars in a row in which a chord is held from a stroke of bass and kick on, at most; turnarounds apart. */
  const heldInARow = (section: Section): number => {
    const { beatTicks } = section.chart.meter;
    let [longest, run] = [0, 0];
    for (const [bar] of section.chart.bars.slice(0, -2).entries()) {
      const chords = inBar(section, bar, 'chords');
      const ats = (part: 'bass' | 'drums', wanted: (pitch: number) => boolean) =>
        inBar(section, bar, part).flatMap(({ at, pitch }) => (wanted(pitch) ? [at] : []));
      const bass = ats('bass', () => true);
      const kick = ats('drums', (pitch) => pitch === DRUM_KEYS.kick);
      const near = (others: readonly number[], at: number) =>
        others.some((other) => Math.abs(other - at) < 24);
      const held = chords.some(
        ({ at, length }) => length >= beatTicks * 0.9 && near(bass, at) && near(kick, at),
      );
      if (chords.length === 0) continue;
      run = held ? run + 1 : 0;
      longest = Math.max(longest, run);
    }
    return longest;
  };

  it.each(['rock', 'straight', 'double-shuffle', 'boogie'] as const)(
    'of %s are not held from where bass and kick strike for more than five bars in a row',
    (feel) => {
      const seeds = inSoak([1, 2, 3, 4, 5, 6, 7, 8], [3, 17]);
      for (const seed of seeds) {
        const program = testProgram(feel, { style: { seed }, plan: { arc: 'breathe' } });
        for (const index of [1, 2, 4, 5])
          expect(heldInARow(sectionOf(program, index))).toBeLessThanOrEqual(5);
      }
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

  it('stays where it was meant where nothing leaps, says a note again where it was, and tears no half step apart', () => {
    const pitches = (next: number | null, ...given: number[]) =>
      withoutLongLeaps(
        given.map((pitch) => ({ pitch })),
        next,
      ).map(({ pitch }) => pitch);
    expect(pitches(null, 36, 40, 29)).toEqual([36, 28, 29]);
    expect(pitches(31, 38, 42, 42)).toEqual([38, 30, 30]);
    expect(pitches(31, 38, 40, 42, 43)).toEqual([38, 40, 42, 43]);
  });

  it('approaches no root by a whole step that would make a dominant a major seventh', () => {
    // Under F7 D is led to from C sharp and E flat, not from E.
    const under = { root: 5, shape: chordShape(romanChord('IV7', 'C')) };
    const steps = approachesTo(38, chordShape(romanChord('ii7', 'C')), under).map((pitch) => pitch - 38);
    expect(steps).not.toContain(2);
    expect(steps).toContain(-1);
    expect(steps).toContain(1);
  });

  it('has no note so short that it would be a click, in double time either', () => {
    for (const feel of inSoak<FeelId>(FEEL_IDS, ['shuffle', 'boogie'])) {
      for (const seed of inSoak([1, 2, 3, 4, 5, 6, 7, 8], [6])) {
        const chart = testChart('standard-turnaround', 6, feelOf(feel).meter ?? '4/4');
        const style = { seed, time: 'double-time' } as const;
        const program = testProgram(feel, { chart, style, plan: { arc: 'breathe', turnarounds: 'varied' } });
        for (const chorus of [0, 1, 2]) {
          const lengths = partOf(sectionOf(program, chorus), 'bass').map(({ length }) => length);
          expect(Math.min(...lengths)).toBeGreaterThan(30);
        }
      }
    }
  });

  const FORMS = inSoak<FormId>(
    ['standard', 'minor-b', 'jazz-bebop', 'eight-iv-third', 'sixteen-b'],
    ['jazz-bebop'],
  );
  it.each(FEEL_IDS.flatMap((feel) => FORMS.map((form) => [feel, form] as const)))(
    'of %s over %s never leaps further than an octave, nor a major seventh',
    (feel, form) => {
      for (const section of choruses(feel, form)) {
        const line = partOf(section, 'bass').map(({ pitch }) => pitch);
        const leaps = line.slice(1).map((pitch, i) => Math.abs(pitch - line[i]));
        expect(leaps.filter((leap) => leap > 12 || leap === 11)).toEqual([]);
      }
    },
  );
});

describe('drums', () => {
  const longestRun = (labels: readonly string[]): number => {
    let [longest, run] = [0, 0];
    for (const [i, label] of labels.entries()) {
      run = label === labels[i - 1] ? run + 1 : 1;
      longest = Math.max(longest, run);
    }
    return longest;
  };

  it.each(FEEL_IDS)('of %s play no bar more than six times in a row', (feel) => {
    for (const seed of inSoak([1, 2, 3, 4, 5, 6, 7, 8], [3])) {
      const program = testProgram(feel, { style: { seed }, plan: { arc: 'breathe' } });
      const bars = [1, 2, 4].flatMap((index) => {
        const section = sectionOf(program, index);
        return section.chart.bars.map((_, bar) =>
          inBar(section, bar, 'drums')
            .map(({ at, pitch }) => `${at} ${pitch}`)
            .join(),
        );
      });
      expect(longestRun(bars)).toBeLessThanOrEqual(6);
    }
  });
});
