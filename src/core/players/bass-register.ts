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

/** Whether a pitch would make a minor chord major, or, where it does not lead on by a half step, a dominant a major seventh. */
const spoils = (pitch: number, target: number, { root, shape }: Under): boolean => {
  const step = (((pitch - root) % 12) + 12) % 12;
  if (shape.third === 3 && step === 4) return true;
  return shape.third === 4 && shape.seventh === 10 && step === 11 && Math.abs(pitch - target) !== 1;
};

/** The chord that an approach is played under. */
interface Under {
  readonly root: number;
  readonly shape: ChordShape;
}

/**
 * The ways into a target: a semitone or a scale step from either side, or the target's own fifth; none that would be the
 * major third of a minor chord still sounding, nor the major seventh of a dominant but for a half step.
 */
export const approachesTo = (target: number, next: ChordShape, under: Under): readonly number[] => {
  const upper = next.scale[1] ?? 2;
  const lower = 12 - (next.scale.at(-1) ?? 10);
  return [target - 1, target + 1, target - lower, target + upper, target + 7, target - 5].filter(
    (pitch) => pitch >= BASS_LOW && pitch <= BASS_HIGH && !spoils(pitch, target, under),
  );
};

/**
 * What a leap costs a line: nothing up to an octave, the longest that a hand on the strings makes, but for the major seventh,
 * which is a half step torn apart (common practice, no source).
 */
const leapCost = (semitones: number): number => {
  const leap = Math.abs(semitones);
  return leap > 12 ? 40 + leap : leap === 11 ? 6 : leap * 0.001;
};
/** What it costs to take a note in another octave than it was meant in: what comes before a leap moves rather than its aim. */
const MOVED = 1;
const LATER = 0.005;
/** What it costs to say a repeated note an octave away. */
const TORN = 3;

/** A way through the first notes of a line: the last pitch, what all cost, and the way before it. */
interface Way {
  readonly pitch: number;
  readonly cost: number;
  readonly before: Way | null;
}

const cheapest = (ways: readonly Way[]): Way | null =>
  ways.reduce<Way | null>((best, way) => (best === null || way.cost < best.cost ? way : best), null);

/**
 * A line with as few notes as possible in another octave, so that nothing leaps further than an octave nor a major seventh.
 * @param next the pitch that follows, which stays.
 */
export const withoutLongLeaps = <Note extends { readonly pitch: number }>(
  line: readonly Note[],
  next: number | null = null,
): readonly Note[] => {
  let ways: readonly Way[] = [];
  for (const [i, { pitch }] of line.entries()) {
    const again = pitch === line[i - 1]?.pitch;
    const octaves = [pitch, pitch - 12, pitch + 12].filter(
      (each) => each === pitch || (each >= BASS_LOW && each <= BASS_HIGH),
    );
    ways = octaves.map((each): Way => {
      const moved = each === pitch ? 0 : MOVED + i * LATER;
      if (i === 0) return { pitch: each, cost: moved, before: null };
      const costs = ways.map((way) => ({
        pitch: each,
        cost: way.cost + moved + leapCost(each - way.pitch) + (again && each !== way.pitch ? TORN : 0),
        before: way,
      }));
      return cheapest(costs) ?? { pitch: each, cost: moved, before: null };
    });
  }
  const led = ways.map((way) => ({
    ...way,
    cost: way.cost + (next === null ? 0 : leapCost(next - way.pitch)),
  }));
  const pitches: number[] = [];
  for (let way = cheapest(led); way !== null; way = way.before) pitches.unshift(way.pitch);
  return line.map((note, i) => {
    const pitch = pitches[i] ?? note.pitch;
    return pitch === note.pitch ? note : { ...note, pitch };
  });
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
