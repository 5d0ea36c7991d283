import type { Chord } from '../theory/chord';
import type { Random } from '../theory/random';
import { chordShape } from './chord-scale';

/** How rich a chord is voiced: guide tones alone, with plain chord tones, or with the usual extensions. */
export type Colour = 'shell' | 'plain' | 'rich';

/** Where chords are placed, as lowest and highest key: C3–C5, lower half when the harp needs the room. */
export interface Register {
  readonly low: number;
  readonly high: number;
}

/** Comping register C3–C5; thirds below C3 are muddy (common practice, no source). */
export const COMPING_REGISTER: Register = { low: 48, high: 72 };
/** Below G4, the home note of a C harp (2 draw), above which most of the playing lies. */
export const ROOMY_REGISTER: Register = { low: 48, high: 66 };

/** Four voices need this much room; below these they would only be mud (common practice, no source). */
const ROOM = 17;
const LOWEST = 44;
const LOWEST_ROOF = 59;

/** The register below a harp's home note: as low as four voices need, and no lower than they stay clear. */
export const roomFor = (harpHome: number | null): Register => {
  if (harpHome === null) return ROOMY_REGISTER;
  const high = Math.min(ROOMY_REGISTER.high, Math.max(LOWEST_ROOF, harpHome - 1));
  return { low: Math.max(LOWEST, Math.min(ROOMY_REGISTER.low, high - ROOM)), high };
};

const extensionsOf = (chord: Chord): readonly number[] => {
  const { third, fifth, seventh, tones, minor } = chordShape(chord);
  const named = tones.filter((step) => ![0, third, fifth, seventh].includes(step));
  if (named.length > 0) return named;
  if (seventh === null || fifth === 6) return [];
  if (minor) return [2, 5];
  return third === 4 ? [2, 9] : [2];
};

/**
 * Ninth or thirteenth over the guide tones of a dominant chord, as any blues colours it, and the eleventh over those of a
 * minor one (common practice, no source).
 */
const colours = (third: number, fifth: number, seventh: number): readonly (readonly number[])[] => {
  if (fifth !== 7 || seventh !== 10) return [];
  if (third === 3) return [[third, seventh, 5]];
  return third === 4 ? [2, 9].map((step) => [third, seventh, step]) : [];
};

/**
 * The colour that the five chord of a minor key has from its scale and that stands over its own root, where a flat ninth
 * would rub with the bass (a five chord may become an augmented one: Wikipedia, "V–IV–I turnaround").
 */
const FLAT_THIRTEEN = 8;

/** Sets of steps above the root that can stand for the chord; each holds the guide tones. */
const stepSets = (chord: Chord, colour: Colour, dark: boolean): readonly (readonly number[])[] => {
  const { third, fifth, seventh, tones } = chordShape(chord);
  const guides = seventh === null ? [third] : [third, seventh];
  if (seventh === null) {
    const sixth = tones.includes(9) && fifth === 7 ? [9] : [];
    return colour === 'shell'
      ? [
          [0, third],
          [third, fifth],
        ]
      : [
          [0, third, fifth],
          ...(sixth.length > 0
            ? [
                [third, fifth, 9],
                [0, third, 9],
              ]
            : []),
        ];
  }
  const extensions = extensionsOf(chord);
  const named = tones.filter((step) => ![0, third, fifth, seventh].includes(step));
  if (colour === 'shell') return [guides, [0, ...guides]];
  const plain = [fifth, 0, ...named.slice(0, 1)].map((step) => [...guides, step]);
  if (dark) return [...plain, [...guides, FLAT_THIRTEEN]];
  if (colour === 'plain')
    return named.length > 0
      ? named.map((step) => [...guides, step])
      : [...plain, ...colours(third, fifth, seventh)];
  const rich = extensions.flatMap((step) => [
    [...guides, step],
    // A thirteenth takes the fifth's place: between fifth and seventh it is a cluster (common practice, no source).
    ...(Math.abs(step - fifth) > 1 && !(fifth === 7 && step === 9) ? [[...guides, fifth, step]] : []),
  ]);
  const both = extensions.length > 1 ? [[...guides, ...extensions.slice(0, 2)]] : [];
  const bare = extensions.length > 1 && named.length === 0 ? [[...guides, fifth]] : [];
  return rich.length > 0 ? [...rich, ...both, ...bare] : plain;
};

/** All close and half-open placings of a set of pitch classes in a register, lowest note first. */
const placings = (
  pitchClasses: readonly number[],
  { low, high }: Register,
): readonly (readonly number[])[] => {
  const found: (readonly number[])[] = [];
  for (const start of pitchClasses) {
    for (let bottom = low + ((((start - low) % 12) + 12) % 12); bottom <= high; bottom += 12) {
      const close = pitchClasses
        .map((pitchClass) => bottom + ((pitchClass - start + 12) % 12))
        .sort((a, b) => a - b);
      found.push(close);
      const second = close.at(-2);
      if (close.length > 2 && second !== undefined) {
        found.push([...close.slice(0, -2), ...close.slice(-1), second - 12].sort((a, b) => a - b));
      }
    }
  }
  return found.filter((pitches) => (pitches[0] ?? 0) >= low && (pitches.at(-1) ?? 128) <= high);
};

/** Every voicing of a chord in a register. @param dark a five chord of a minor key */
export const voicingsOf = (
  chord: Chord,
  colour: Colour,
  register: Register,
  dark = false,
): readonly (readonly number[])[] =>
  stepSets(chord, colour, dark).flatMap((steps) =>
    placings(
      steps.map((step) => (chord.root + step) % 12),
      register,
    ),
  );

/** Semitones the voices move from one voicing to the next, summed over the voices of the next. */
export const movement = (from: readonly number[], to: readonly number[]): number => {
  if (from.length === to.length)
    return to.reduce((sum, pitch, i) => sum + Math.abs(pitch - (from[i] ?? pitch)), 0);
  return to.reduce((sum, pitch) => sum + Math.min(...from.map((each) => Math.abs(each - pitch))), 0);
};

/** A voicing and what it costs wherever it comes from. */
interface Placed {
  readonly pitches: readonly number[];
  readonly cost: number;
}

const place = (pitches: readonly number[], middle: number): Placed => {
  const centre = pitches.reduce((sum, pitch) => sum + pitch, 0) / pitches.length;
  return { pitches, cost: Math.abs(centre - middle) * 0.12 + rubs(pitches) };
};

/** Semitones between neighbours in the bass of a voicing that rub: a second at the bottom, or on top. */
const rubs = (pitches: readonly number[]): number => {
  const gaps = pitches.slice(1).map((pitch, i) => pitch - (pitches[i] ?? pitch));
  const bottom = gaps[0] ?? 12;
  const muddy = bottom === 1 || (bottom === 2 && (pitches[0] ?? 60) < 55) ? 2.5 : 0;
  const sharp = (gaps.at(-1) ?? 12) <= 1 ? 3 : 0;
  return muddy + sharp + gaps.filter((gap) => gap === 1).length;
};

/** What a semitone off the wanted top note costs: enough that the line of top notes has a shape of its own. */
const TOP_COST = 0.7;

/** What each use of a voicing in this passage costs it, up to so many: the hand wanders. */
const WORN_COST = 2.5;
const MOST_WORN = 8;

/** How much a player likes one voicing better than another in one passage, and others in the next. */
const TASTE = 4.5;

/** What it costs to add or drop a voice: lines stay lines while the number of voices does. */
const RESIZE_COST = 2.2;

/** What is wanted of the next voicing. */
export interface Wanted {
  readonly colour: Colour;
  /** Where its top note should lie, as a MIDI number; null lets it lie where the voices lead. */
  readonly top: number | null;
  /** Not the same again, where there is a choice. */
  readonly anew: boolean;
  /** A five chord of a minor key: its colour is the flat thirteenth. False when absent. */
  readonly dark?: boolean;
}

/** Finds the next voicing of a chord after another. */
type Voicer = (before: readonly number[] | null, chord: Chord, wanted: Wanted) => readonly number[];

/**
 * A voicer that takes the voicing moving least from the one before, its top note towards where it is wanted, chance
 * deciding between near equals; with nothing wanted the first of a passage lies near the middle of the register.
 */
export const createVoicer = (random: Random, register: Register): Voicer => {
  const known = new Map<string, readonly Placed[]>();
  const used = new Map<readonly number[], number>();
  const middle = (register.low + register.high) / 2;
  const placedOf = (chord: Chord, colour: Colour, dark: boolean): readonly Placed[] => {
    const key = `${chord.symbol} ${colour} ${dark}`;
    const placed =
      known.get(key) ??
      voicingsOf(chord, colour, register, dark).map((each) => {
        const { pitches, cost } = place(each, middle);
        return { pitches, cost: cost + random() * TASTE };
      });
    known.set(key, placed);
    return placed;
  };
  return (before, chord, { colour, top, anew, dark = false }) => {
    let best: readonly number[] = [];
    let least = Number.POSITIVE_INFINITY;
    const rich = placedOf(chord, colour, dark);
    for (const { pitches, cost } of rich.length > 0 ? rich : placedOf(chord, 'shell', dark)) {
      const moves =
        before === null || before.length === 0 ? null : movement(before, pitches) / pitches.length;
      const stays = moves === 0 ? (anew ? 4 : 0.6) : 0;
      const thickens = before !== null && before.length !== pitches.length ? RESIZE_COST : 0;
      const off = top === null ? 0 : Math.abs((pitches.at(-1) ?? top) - top) * TOP_COST;
      const worn = Math.min(used.get(pitches) ?? 0, MOST_WORN) * WORN_COST;
      const total = cost + off + (moves ?? 0) * 1.3 + stays + thickens + worn + random() * 1.5;
      if (total < least) [best, least] = [pitches, total];
    }
    used.set(best, (used.get(best) ?? 0) + 1);
    return best;
  };
};
