import type { Chord } from '../theory/chord';

/** A chord as semitones above its root, each within one octave. */
export interface ChordShape {
  readonly tones: readonly number[];
  readonly third: number;
  readonly fifth: number;
  /** The seventh, or what stands for it; null in a triad. */
  readonly seventh: number | null;
  readonly minor: boolean;
  /** Seven steps that fit the chord, for passing notes. */
  readonly scale: readonly number[];
}

const has = (tones: readonly number[], ...wanted: readonly number[]): number | null =>
  wanted.find((tone) => tones.includes(tone)) ?? null;

/** Steps 2, 4 and 6 that usually go with a kind of chord (common practice, no source). */
const passingSteps = (
  third: number,
  fifth: number,
  seventh: number | null,
): readonly [number, number, number] => {
  if (third === 3 && fifth === 6) return seventh === 9 ? [2, 5, 8] : [1, 5, 8];
  return [2, 5, fifth === 8 ? 10 : 9];
};

/** Reads a chord's tones as third, fifth, seventh and the scale around them, whatever its quality. */
export const chordShape = (chord: Chord): ChordShape => {
  const tones = [...new Set(chord.tones.map((tone) => (tone.pitchClass - chord.root + 12) % 12))].sort(
    (a, b) => a - b,
  );
  const third = has(tones, 4, 3, 5, 2) ?? 4;
  const fifth = has(tones, 7, 6, 8) ?? 7;
  const seventh = has(tones, 10, 11) ?? (third === 3 && fifth === 6 ? has(tones, 9) : null);
  const [two, four, six] = passingSteps(third, fifth, seventh);
  const steps = [0, two, third, four, fifth, six, seventh ?? 10];
  const scale = [...new Set([...steps, ...tones])].sort((a, b) => a - b);
  return { tones, third, fifth, seventh, minor: third === 3, scale };
};
