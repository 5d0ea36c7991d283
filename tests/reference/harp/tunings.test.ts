import { describe, expect, it } from 'vitest';
import { scaleTab } from '../../../src/core/fit/scale-tab';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { coverSentence, findTuning, TUNINGS } from '../../../src/core/harp/tunings';
import { pitchClassOf, pitchName } from '../../../src/core/theory/pitch';
import { type ScaleId, scaleOf } from '../../../src/core/theory/scales';
import { asMidi, asPitchClass } from '../../../src/core/theory/units';

/** Published letters of both rows, typed in; the key is the one the layout is published for. */
const PUBLISHED: readonly (readonly [id: string, key: string, blow: string, draw: string, source: string])[] =
  [
    [
      'richter',
      'C',
      'C E G C E G C E G C',
      'D G B D F A B D F A',
      'OEIS A291810; Wikibooks, "Harmonica Layouts and Alternate Tunings"',
    ],
    [
      'raised-five-draw',
      'C',
      'C E G C E G C E G C',
      'D G B D F# A B D F A',
      'Harmonica World, December 2011, "Country harmonica tuning"',
    ],
    ['raised-five-and-nine-draw', 'C', 'C E G C E G C E G C', 'D G B D F# A B D F# A', 'from memory'],
    [
      'natural-minor',
      'C',
      'C Eb G C Eb G C Eb G C',
      'D G Bb D F A Bb D F A',
      'web article AHN3.html, 2005: labelled Gm, with the range of a C harp',
    ],
    [
      'dorian',
      'C',
      'C E G C E G C E G C',
      'D G Bb D F A Bb D F A',
      'web article AHN3.html, 2005: a C blow plate with a Gm draw plate',
    ],
    ['harmonic-minor', 'C', 'C Eb G C Eb G C Eb G C', 'D G B D F Ab B D F Ab', 'from memory'],
    ['raised-three-blow', 'C', 'C E A C E G C E G C', 'D G B D F A B D F A', 'from memory'],
    [
      'raised-three-blow-five-and-nine-draw',
      'C',
      'C E A C E G C E G C',
      'D G B D F# A B D F# A',
      'from memory; by arithmetic from the two layouts it joins',
    ],
    ['solo', 'C', 'C E G C C E G C C E', 'D F A B D F A B D F', 'Wikipedia, "Solo tuning"'],
    [
      'circular-mixolydian',
      'G',
      'G B D F A C E G B D',
      'A C E G B D F A C E',
      'web article "Circular tuned harmonicas"',
    ],
    ['circular-major', 'C', 'C E G B D F A C E G', 'D F A C E G B D F A', 'rotation of the row above'],
    ['diminished', 'C', 'C Eb Gb A C Eb Gb A C Eb', 'D F Ab B D F Ab B D F', 'web note "Diminished tuning"'],
    ['augmented', 'C', 'C E Ab C E Ab C E Ab C', 'Eb G B Eb G B Eb G B Eb', 'from memory'],
    [
      'balanced-harmonic-minor',
      'A',
      'A C E G A C E G A C',
      'B D F G# B D F G# B D',
      'US patent 8,153,875 B1 (2012): steps of the rows; the letters by arithmetic',
    ],
  ];

const build = (id: string, key: string): ReturnType<typeof buildHarp> => {
  const tuning = findTuning(id);
  if (tuning === null) throw new Error(`no tuning ${id}`);
  return buildHarp({ tuning, key: pitchClassOf(key), octave: 0 });
};

describe('reed tables', () => {
  it.each(PUBLISHED)('%s in %s', (id, key, blow, draw) => {
    const harp = build(id, key);
    const classes = (breath: 'blow' | 'draw'): readonly number[] =>
      harp.reeds.filter((reed) => reed.breath === breath).map(({ pitch }) => asPitchClass(pitch));
    expect(classes('blow')).toEqual(blow.split(' ').map(pitchClassOf));
    expect(classes('draw')).toEqual(draw.split(' ').map(pitchClassOf));
  });

  it('rise within each row', () => {
    for (const { id, blow, draw } of TUNINGS) {
      for (const row of [blow, draw]) {
        expect(
          row.every((step, i) => i === 0 || step >= (row[i - 1] ?? 0)),
          id,
        ).toBe(true);
      }
    }
  });

  it('are all checked', () => {
    expect(PUBLISHED.map(([id]) => id).sort()).toEqual(TUNINGS.map(({ id }) => id).sort());
  });
});

describe('what a changed reed brings, by the rule of bends', () => {
  const hole = (id: string, number: number): string =>
    build(id, 'C')
      .sounds.filter((sound) => sound.hole === number)
      .map((sound) => `${soundId(sound)} ${pitchName(asMidi(sound.pitch), 'C')}`)
      .join(', ');

  it('raised 5 draw: F stays as a bend, and the overblow doubles 6 blow', () => {
    expect(hole('raised-five-draw', 5)).toBe("5B E5, 5D' F5, 5D Gb5, 5OB G5");
  });

  it('raised 3 blow: only Bb is left to bend, Ab as the overblow of hole 2', () => {
    expect(hole('raised-three-blow', 3)).toBe("3B A4, 3D' Bb4, 3D B4, 3OB C5");
    expect(hole('raised-three-blow', 2)).toContain('2OB Ab4');
  });

  // Web note "Diminished tuning": every hole a whole step, minor thirds along, so three patterns serve twelve keys.
  it('diminished: a whole step in each hole, minor thirds along', () => {
    const { blow, draw } = findTuning('diminished') ?? { blow: [], draw: [] };
    expect(draw.map((step, i) => step - (blow[i] ?? 0))).toEqual(Array.from({ length: 10 }, () => 2));
    expect(blow.slice(1).map((step, i) => step - (blow[i] ?? 0))).toEqual(Array.from({ length: 9 }, () => 3));
  });

  // US patent 8,153,875 B1: one row steps 3, 4, 3, 2 semitones, the other 3 throughout.
  it('balanced harmonic minor: the steps of the patent', () => {
    const { blow, draw } = findTuning('balanced-harmonic-minor') ?? { blow: [], draw: [] };
    expect(blow.slice(1).map((step, i) => step - (blow[i] ?? 0))).toEqual([3, 4, 3, 2, 3, 4, 3, 2, 3]);
    expect(draw.slice(1).every((step, i) => step - (draw[i] ?? 0) === 3)).toBe(true);
  });
});

describe('what retuned harps play without bends', () => {
  const holds = (tuning: string, scale: ScaleId, tonic: string): boolean => {
    const natural = new Set(build(tuning, 'C').reeds.map(({ pitch }) => asPitchClass(pitch)));
    return scaleOf(scale, tonic).tones.every(({ pitchClass }) => natural.has(pitchClass));
  };

  it.each([
    // Web article AHN3.html, 2005.
    ['natural-minor', 'aeolian', 'G'],
    ['dorian', 'dorian', 'G'],
    ['dorian', 'mixolydian', 'C'],
    // By arithmetic from the same reeds.
    ['natural-minor', 'dorian', 'C'],
    // From memory: what the layout is named for.
    ['harmonic-minor', 'harmonic-minor', 'C'],
    // Harmonica World, December 2011, "Country harmonica tuning": a major scale in second position.
    ['raised-five-draw', 'ionian', 'G'],
    // By arithmetic: with the sixth in hole 3 and the seventh in hole 5 the scale has no hole left.
    ['raised-three-blow-five-and-nine-draw', 'ionian', 'G'],
    // Web article "Circular tuned harmonicas": naturals only.
    ['circular-major', 'ionian', 'C'],
  ] as const)('%s holds %s on %s', (tuning, scale, tonic) => {
    expect(holds(tuning, scale, tonic)).toBe(true);
  });

  it('a standard harp holds neither a minor nor a major scale on G', () => {
    expect(holds('richter', 'aeolian', 'G') || holds('richter', 'ionian', 'G')).toBe(false);
  });

  // Web article AHN3.html, 2005: a natural minor harp marked Gm has the range of a C harp.
  it('says what the cover of a minor harp usually names', () => {
    const minor = TUNINGS.find(({ id }) => id === 'natural-minor') ?? TUNINGS[0];
    expect(coverSentence(minor, pitchClassOf('C'))).toBe(
      'Its cover usually says Gm; it has the range of a C harp.',
    );
    expect(coverSentence(TUNINGS[0], pitchClassOf('C'))).toBeNull();
  });

  it('says what a cover usually names only where the note beside it says so too', () => {
    for (const tuning of TUNINGS) {
      const usual = coverSentence(tuning, pitchClassOf('C')) !== null;
      expect(usual, tuning.id).toBe(tuning.labelNote?.startsWith('Usually labelled by its second') ?? false);
    }
  });

  // Harmonica World, December 2011 (draw 5), and the layouts with draw 9 and blow 3 raised, reed by reed.
  it('raises 3 blow a tone, 5 and 9 draw a semitone, and nothing else', () => {
    const joined = findTuning('raised-three-blow-five-and-nine-draw');
    expect(joined?.blow).toEqual(findTuning('raised-three-blow')?.blow);
    expect(joined?.draw).toEqual(findTuning('raised-five-and-nine-draw')?.draw);
  });

  it('gives a whole octave of the major scale in second position from natural notes alone', () => {
    const runs = (id: string) =>
      scaleTab({ scale: scaleOf('ionian', 'G'), harp: build(id, 'C'), technique: NATURAL_NOTES });
    const [low] = runs('raised-three-blow-five-and-nine-draw').filter(({ complete }) => complete);
    expect(low?.up.map(({ sound }) => sound && soundId(sound))).toEqual([
      '2D',
      '3B',
      '3D',
      '4B',
      '4D',
      '5B',
      '5D',
      '6B',
    ]);
    expect(runs('richter').some(({ complete }) => complete)).toBe(false);
  });
});
