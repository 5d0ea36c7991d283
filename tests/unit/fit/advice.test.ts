import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChart, layChart, METERS } from '../../../src/core/chart/build-chart';
import { FORM_IDS, type FormId } from '../../../src/core/chart/forms';
import { advise } from '../../../src/core/fit/advice';
import { harpName } from '../../../src/core/fit/advice-words';
import { plainNotes } from '../../../src/core/fit/plain-notes';
import { effortsOf, scoreOf, wantedNotesOf, wantedTonesOf } from '../../../src/core/fit/wanted-notes';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Harp } from '../../../src/core/harp/harp';
import { EVERY_TECHNIQUE, NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { findTuning, RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { asPitchClass } from '../../../src/core/theory/units';
import { inTurn } from '../../helpers/soak';

const harpIn = (key: number, tuning = RICHTER, octave = 0): Harp =>
  buildHarp({ tuning, key: asPitchClass(key), octave });
const TWELVE_HARPS = PITCH_CLASSES.map((key) => harpIn(key));
const BENDS = { ...EVERY_TECHNIQUE, overbends: false };
const STANDARD_IN_A = buildChart({ form: 'standard', key: asPitchClass(9), meter: '4/4' });

describe('advise', () => {
  it('puts second position first for a standard blues with bends, and says why', () => {
    const [best, second] = advise({ chart: STANDARD_IN_A, harps: TWELVE_HARPS, technique: BENDS });
    expect(best?.position).toBe(2);
    expect(best?.reasons[0]).toBe(
      'D harp, 2nd position (cross): every chord tone but the b7 of D7 in the middle octave and the 3 of E7 in the middle octave',
    );
    expect(best?.reasons[2]).toBe('blue notes: b3 in two octaves, b5 in two octaves, b7 in all octaves');
    expect(second?.position).toBe(3);
  });

  const namesOf = (form: FormId, technique: typeof BENDS): readonly number[] => {
    const chart = buildChart({ form, key: asPitchClass(9), meter: '4/4' });
    return advise({ chart, harps: TWELVE_HARPS, technique }).map(({ position }) => position);
  };

  // Common practice, no source.
  it.each([
    ['minor-a', BENDS, [3, 2, 4, 5]],
    ['minor-b', BENDS, [3, 2, 4, 5]],
    ['minor-b', { ...NATURAL_NOTES, drawBends: true }, [3, 2, 4, 5]],
    ['minor-b', { ...NATURAL_NOTES, overbends: true }, [3, 4, 5, 2]],
    ['minor-a', NATURAL_NOTES, [3, 2, 1]],
    ['eight-v-second', BENDS, [2]],
    ['eight-half-bar', BENDS, [2]],
    ['eight-v-second', NATURAL_NOTES, [2]],
    ['quick-change-turnaround', { ...NATURAL_NOTES, drawBends: true }, [2]],
  ] as const)('follows custom in %s with %j: %j', (form, technique, positions) => {
    expect(namesOf(form, technique).slice(0, positions.length)).toEqual(positions);
  });

  it('offers a beginner nothing beyond third position, in any form, unless there is nothing else', () => {
    for (const form of FORM_IDS) expect([...namesOf(form, NATURAL_NOTES)].sort()).toEqual([1, 2, 3]);
    const [far] = advise({ chart: STANDARD_IN_A, harps: [harpIn(6)], technique: NATURAL_NOTES });
    expect(far?.position).toBe(10);
  });

  it('puts a minor tuning in second position beside the usual one for a minor blues', () => {
    const chart = buildChart({ form: 'minor-a', key: asPitchClass(7), meter: '4/4' });
    const harps = [harpIn(0), harpIn(5), harpIn(0, findTuning('natural-minor') ?? RICHTER)];
    const rows = advise({ chart, harps, technique: BENDS });
    expect(rows.map(({ harpIndex, position }) => [harpIndex, position])).toEqual([
      [2, 2],
      [1, 3],
      [0, 2],
    ]);
  });

  it('is in the order of the numbers shown: every form, key and set of techniques', () => {
    const sets = [false, true].flatMap((drawBends) =>
      [false, true].flatMap((blowBends) =>
        [false, true].map((overbends) => ({ drawBends, blowBends, overbends, off: [] as string[] })),
      ),
    );
    for (const [turn, form] of FORM_IDS.entries()) {
      for (const key of inTurn(PITCH_CLASSES, turn)) {
        const chart = buildChart({ form, key, meter: '4/4' });
        for (const technique of sets) {
          const rows = advise({ chart, harps: TWELVE_HARPS, technique, inHand: key });
          const shown = rows.map(({ choice, fit }) => [choice, -fit]);
          expect(shown).toEqual(shown.toSorted(([a = 0, b = 0], [c = 0, d = 0]) => a - c || b - d));
          for (const { fit, score } of rows) expect(Math.abs(fit - 100 * score)).toBeLessThanOrEqual(0.5);
        }
      }
    }
  });

  it.each([
    ['standard', 2],
    ['quick-change', 2],
    ['jazz-bebop', 2],
  ] as const)('puts the cross harp before all others for draw bends alone: %s', (form, position) => {
    const chart = buildChart({ form, key: asPitchClass(7), meter: '4/4' });
    const technique = { ...NATURAL_NOTES, drawBends: true };
    const [best] = advise({ chart, harps: TWELVE_HARPS, technique, inHand: 0 });
    expect(best).toMatchObject({ position, harpIndex: 0 });
  });

  it('lets the harp in hand win where two come out alike, and only there', () => {
    const chart = buildChart({ form: 'minor-b', key: asPitchClass(9), meter: '4/4' });
    const twins = [harpIn(7), harpIn(7), harpIn(0)];
    const first = (inHand: number | null): number | undefined =>
      advise({ chart, harps: twins, technique: BENDS, inHand })[0]?.harpIndex;
    expect([first(null), first(0), first(1), first(2)]).toEqual([0, 0, 1, 0]);
  });

  it('answers for every key asked, transposing the changes', () => {
    const rows = advise({ chart: STANDARD_IN_A, harps: [harpIn(0)], technique: BENDS, keys: PITCH_CLASSES });
    expect(rows.map(({ position }) => position).sort((a, b) => a - b)).toEqual(
      Array.from({ length: 12 }, (_, i) => i + 1),
    );
    expect(rows[0]).toMatchObject({ position: 2, key: 7 });
  });

  it('sums up many gaps instead of listing them', () => {
    const rows = advise({ chart: STANDARD_IN_A, harps: [harpIn(6)], technique: NATURAL_NOTES });
    expect(rows[0]?.reasons[0]).toMatch(
      /^F# harp, 10th position: \d+ of 36 chord tones, .*; most of those missing belong to [ADE]7$/,
    );
  });

  it('needs a chart and takes an empty case', () => {
    const empty = layChart({ title: '', mode: 'major', tonic: 'C', meter: METERS['4/4'], bars: [] });
    expect(() => advise({ chart: empty, harps: [], technique: BENDS })).toThrow('1 bar or more, got 0');
    expect(advise({ chart: STANDARD_IN_A, harps: [], technique: BENDS })).toEqual([]);
  });

  it('never ranks a harp above one that reaches all it reaches at no more effort', () => {
    const harps = TUNINGS.flatMap((tuning) => PITCH_CLASSES.map((key) => harpIn(key, tuning)));
    fc.assert(
      fc.property(
        fc.constantFrom(...FORM_IDS),
        fc.constantFrom(...PITCH_CLASSES),
        fc.record({
          drawBends: fc.boolean(),
          blowBends: fc.boolean(),
          overbends: fc.boolean(),
          off: fc.constant([]),
        }),
        fc.nat(harps.length - 1),
        (form, key, technique, inHand) => {
          const chart = buildChart({ form, key, meter: '4/4' });
          const rows = advise({ chart, harps, technique, inHand });
          for (const [i, above] of rows.entries()) {
            for (const below of rows.slice(i + 1)) {
              const dominated = below.notes.every(({ effort }, n) => {
                const other = above.notes[n]?.effort ?? null;
                return other === null || (effort !== null && effort <= other);
              });
              if (dominated && below.choice === above.choice) expect(below.fit).toBe(above.fit);
            }
          }
        },
      ),
      { numRuns: 8 },
    );
  });

  it('counts every note gained and every bit of effort saved', () => {
    const [row] = advise({ chart: STANDARD_IN_A, harps: [harpIn(0)], technique: BENDS });
    const notes = row?.notes ?? [];
    const effort = fc.option(fc.double({ min: 0.25, max: 6, noNaN: true }), { nil: null });
    const efforts = fc.array(effort, { minLength: notes.length, maxLength: notes.length });
    fc.assert(
      fc.property(efforts, fc.nat(notes.length - 1), (given, at) => {
        const base = notes.map((note, i) => ({ ...note, effort: given[i] ?? null }));
        const better = base.map((note, i) =>
          i === at ? { ...note, effort: note.effort === null ? 5 : note.effort / 2 } : note,
        );
        expect(scoreOf(better)).toBeGreaterThan(scoreOf(base));
      }),
    );
  });

  it('never scores less with more technique or fewer sounds switched off', () => {
    const ids = TWELVE_HARPS[0]?.sounds.map(soundId) ?? [];
    const choice = fc.record({
      drawBends: fc.boolean(),
      blowBends: fc.boolean(),
      overbends: fc.boolean(),
      off: fc.subarray(ids),
    });
    fc.assert(
      fc.property(choice, choice, fc.constantFrom(...FORM_IDS), (a, b, form) => {
        const more = {
          drawBends: a.drawBends || b.drawBends,
          blowBends: a.blowBends || b.blowBends,
          overbends: a.overbends || b.overbends,
          off: a.off.filter((id) => b.off.includes(id)),
        };
        const wanted = wantedTonesOf(buildChart({ form, key: asPitchClass(7), meter: '4/4' }));
        const score = (technique: typeof a): number =>
          scoreOf(wantedNotesOf(wanted, effortsOf(harpIn(0), technique)));
        expect(score(more)).toBeGreaterThanOrEqual(score(a) - 1e-12);
        expect(score(a)).toBeGreaterThanOrEqual(0);
        expect(score(more)).toBeLessThanOrEqual(1);
      }),
    );
  });
});

describe('harpName', () => {
  it.each([
    [harpIn(0), 'C harp'],
    [harpIn(5, RICHTER, -1), 'Low F harp'],
    [harpIn(7, RICHTER, 1), 'High G harp'],
    [harpIn(0, RICHTER, -2), 'Double low C harp'],
    [harpIn(9, findTuning('natural-minor') ?? RICHTER), 'A harp, natural minor'],
  ])('%#: %s', (harp, name) => {
    expect(harpName(harp)).toBe(name);
  });
});

describe('plainNotes', () => {
  const plain = plainNotes(harpIn(0));

  it('lists the scales of each position that need no bend', () => {
    const ids = plain.positions.map(({ scales }) => scales.map(({ id }) => id).join(' '));
    expect(ids).toEqual([
      'major-pentatonic ionian',
      'major-pentatonic mixolydian',
      'minor-pentatonic dorian',
      'minor-pentatonic aeolian',
      'minor-pentatonic phrygian',
      'locrian',
      '',
      '',
      '',
      '',
      '',
      'major-pentatonic lydian',
    ]);
    expect(plain.positions[0]?.scales[1]).toEqual({ id: 'ionian', wholeOctaves: 1 });
  });

  it('lists the chords with their shortest group of holes', () => {
    expect(plain.chords.map(({ label, symbol }) => `${label} ${symbol}`)).toEqual([
      'blow 1-2-3 C',
      'draw 1-2-3 G',
      'draw 2-3-4-5 G7',
      'draw 2-3-4-5-6 G9',
      'draw 3-4-5 Bdim',
      'draw 3-4-5-6 Bm7b5',
      'draw 4-5-6 Dm',
    ]);
  });
});
