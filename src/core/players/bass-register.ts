import type { Chord } from '../theory/chord';
import type { Random } from '../theory/random';
import type { ChordShape } from './chord-scale';

/** The walking register: the low string E1 of a four-string bass to G3 (compass after "Instruments of the Modern Symphony Orchestra", p. 14; upper bound common practice, no source). */
export const BASS_LOW = 28;
export const BASS_HIGH = 55;

/** The home place of a pitch class: in the lowest octave of the bass, E1 to E flat 2. */
export const homePitch = (pitchClass: number): number =>
  BASS_LOW + ((((pitchClass - BASS_LOW) % 12) + 12) % 12);

/** Brings a pitch into the register by octaves. */
export const intoRegister = (pitch: number): number => {
  let inside = pitch;
  while (inside > BASS_HIGH) inside -= 12;
  while (inside < BASS_LOW) inside += 12;
  return inside;
};

/** Whether a pitch would make a minor chord major. */
const spoilsMinor = (pitch: number, { root, shape }: Under): boolean =>
  shape.third === 3 && (((pitch - root) % 12) + 12) % 12 === 4;

/** The chord that an approach is played under. */
interface Under {
  readonly root: number;
  readonly shape: ChordShape;
}

/**
 * The ways into a target: a semitone or a scale step from either side, or the target's own fifth; none that would be the
 * major third of a minor chord still sounding.
 */
export const approachesTo = (target: number, next: ChordShape, under: Under): readonly number[] => {
  const upper = next.scale[1] ?? 2;
  const lower = 12 - (next.scale.at(-1) ?? 10);
  return [target - 1, target + 1, target - lower, target + upper, target + 7, target - 5].filter(
    (pitch) => pitch >= BASS_LOW && pitch <= BASS_HIGH && !spoilsMinor(pitch, under),
  );
};

/** An octave is the longest leap a hand on the strings makes between two notes of a line (common practice, no source). */
const LONGEST_LEAP = 12;

/** A line whose notes are taken an octave nearer to what follows where the leap would be longer than an octave. */
export const withoutLongLeaps = <Note extends { readonly pitch: number }>(
  line: readonly Note[],
): readonly Note[] => {
  const near: Note[] = [];
  for (const [i, note] of line.entries()) {
    const next = line[i + 1]?.pitch ?? note.pitch;
    const before = near.at(-1)?.pitch ?? note.pitch;
    const pitch = note.pitch + (next > note.pitch ? 12 : -12);
    const helps =
      Math.abs(next - note.pitch) > LONGEST_LEAP &&
      pitch >= BASS_LOW &&
      pitch <= BASS_HIGH &&
      Math.abs(pitch - before) <= LONGEST_LEAP;
    near.push(helps ? { ...note, pitch } : note);
  }
  return near;
};

/** Where an approach leads. */
interface Target {
  readonly pitch: number;
  readonly shape: ChordShape;
}

/** An approach to a target near a pitch, semitones before steps before fifths, a little chance deciding. */
export const pickApproach = (random: Random, from: number, target: Target, under: Under): number => {
  const costs = approachesTo(target.pitch, target.shape, under).map((pitch, order) => {
    const leap = Math.abs(pitch - from);
    const stays = pitch === from ? 4 : 0;
    const far = leap > 12 ? 8 : leap > 7 ? 3 : 0;
    return { pitch, cost: order * 0.5 + leap * 0.3 + far + stays + random() * 2.5 };
  });
  const best = costs.reduce((a, b) => (b.cost < a.cost ? b : a), {
    pitch: target.pitch,
    cost: Number.POSITIVE_INFINITY,
  });
  return best.pitch;
};

/** Where the bass plays a chord's root, or the bass of a slash chord: its home place, E1 to E flat 2. */
export const bassRoot = (chord: Chord): number => homePitch(chord.bass);
