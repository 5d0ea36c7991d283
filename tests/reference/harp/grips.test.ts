import { chordParserFactory } from 'chord-symbol';
import { Chord as TonalChord } from 'tonal';
import { describe, expect, it } from 'vitest';
import { type Grip, gripsFor } from '../../../src/core/fit/grips';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { chordOf } from '../../../src/core/theory/chords';
import { pitchClassOf, pitchName } from '../../../src/core/theory/pitch';
import { plainName } from '../../../src/core/theory/spelling';
import { asPitchClass } from '../../../src/core/theory/units';

/** Every group with a chord name, of every tuning in C: a chord of all twelve tones lets each one through. */
const ANY_CHORD = {
  ...chordOf({ root: 'C', quality: '7' }),
  tones: Array.from({ length: 12 }, (_, i) => ({
    degree: 'R',
    pitchClass: asPitchClass(i),
    name: plainName(i, 'C'),
  })),
};

const named: readonly Grip[] = TUNINGS.flatMap(
  (tuning) =>
    gripsFor({ chord: ANY_CHORD, harp: buildHarp({ tuning, key: asPitchClass(0), octave: 0 }) }).fitting,
).filter(({ symbol }) => symbol !== null);

const classesOf = (grip: Grip): readonly number[] =>
  [...new Set(grip.sounds.map(({ pitch }) => asPitchClass(pitch)))].sort((a, b) => a - b);

describe('chord names of grips', () => {
  it('cover many groups', () => {
    expect(named.length).toBeGreaterThan(200);
    expect(new Set(named.map(({ symbol }) => symbol)).size).toBeGreaterThan(15);
  });

  // Second opinion: chord-symbol 4.0.0 (MIT) reads the name back to the same pitch classes.
  it('agree with chord-symbol', () => {
    const parse = chordParserFactory();
    for (const grip of named) {
      const theirs = parse((grip.symbol ?? '').replace('7no5', '7(omit5)'));
      if (!('normalized' in theirs)) throw new Error(`chord-symbol does not read ${grip.symbol}`);
      const classes = [...new Set(theirs.normalized.notes.map(pitchClassOf))].sort((a, b) => a - b);
      expect(classes, `${grip.label}: ${grip.symbol}`).toEqual(classesOf(grip));
    }
  });

  // Third opinion: tonal 6.4.3 detects chords from notes; ours must be among its readings.
  it('are among what tonal detects', () => {
    for (const grip of named) {
      const notes = [...grip.sounds]
        .sort((a, b) => a.pitch - b.pitch)
        .map(({ pitch }) => pitchName(pitch, 'C').replace(/\d/, ''));
      const ours = TonalChord.get(grip.symbol ?? '');
      const readings = TonalChord.detect(notes).map((each) => TonalChord.get(each));
      const match = readings.some(
        (each) =>
          each.tonic !== null &&
          ours.tonic !== null &&
          pitchClassOf(each.tonic) === pitchClassOf(ours.tonic) &&
          each.type === ours.type,
      );
      expect(match, `${grip.label}: ${grip.symbol} in ${TonalChord.detect(notes).join(' ')}`).toBe(true);
    }
  });

  // Wikipedia, "Richter-tuned harmonica": the chords a standard harp is built on.
  it.each([
    ['blow 1-2-3', 'C major, root lowest'],
    ['draw 1-2-3-4', 'G major, 5 lowest'],
    ['draw 2-3-4', 'G major, root lowest'],
    ['draw 2-3-4-5', 'G dominant seventh, root lowest'],
    ['draw 4-5-6', 'D minor, root lowest'],
    ['draw 8-9-10', 'D minor, root lowest'],
  ])('%s of a C harp is %s', (label, name) => {
    const standard = gripsFor({
      chord: ANY_CHORD,
      harp: buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 }),
    });
    expect(standard.fitting.find((each) => each.label === label)?.name).toBe(name);
  });
});
