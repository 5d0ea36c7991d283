import type { ScaleId } from '../theory/scales';
import { asPitchClass, type PitchClass } from '../theory/units';

/** A position: which step of the circle of fifths above the harp's key the song is in. */
export interface Position {
  /** 1–12. */
  readonly number: number;
  /** Trade name, or empty where there is none in common use. */
  readonly name: string;
  /** Semitones from the harp key up to the song key. */
  readonly offset: number;
  /** The mode the natural notes of a standard harp give there, or null where the tonic is not among them. */
  readonly mode: ScaleId | null;
  /** What it is used for. */
  readonly use: string;
}

/** Names: Wikibooks, "Harmonica/Positions"; modes: harp-l archive, March 2012, msg00904; uses: common practice, no source. */
const POSITION_ROWS: readonly (readonly [name: string, mode: ScaleId | null, use: string])[] = [
  ['straight', 'ionian', 'folk melodies; blues in the low and high octaves with blow bends'],
  ['cross', 'mixolydian', 'the usual blues position: strong draw notes that bend'],
  ['slant', 'dorian', 'minor blues, and minor colour over major ones'],
  ['', 'aeolian', 'natural minor tunes'],
  ['', 'phrygian', 'minor tunes, now and then'],
  ['', 'locrian', 'rare'],
  ['', null, 'rare: the tonic itself is a bend or overbend'],
  ['', null, 'rare: the tonic itself is a bend or overbend'],
  ['', null, 'rare: the tonic itself is a bend or overbend'],
  ['', null, 'rare: the tonic itself is a bend or overbend'],
  ['', null, 'rare; within reach of second-position habits'],
  ['', 'lydian', 'major melodies'],
];

/**
 * The twelve positions: each a fifth (7 semitones) above the one before (harp-l archive, July 1994, msg00019;
 * Wikibooks, "Harmonica/Positions").
 */
export const POSITIONS: readonly Position[] = POSITION_ROWS.map(([name, mode, use], i) => ({
  number: i + 1,
  name,
  offset: (7 * i) % 12,
  mode,
  use,
}));

/** The position of a number. Throws RangeError unless it is a whole number from 1 to 12. */
export const positionAt = (number: number): Position => {
  const position = POSITIONS[number - 1];
  if (position === undefined)
    throw new RangeError(`A position is a whole number from 1 to 12, got ${number}`);
  return position;
};

/**
 * The song key of a harp in a position.
 *
 * @example
 * keyName(songKey(0, 2), 'major') // 'G'
 */
export const songKey = (harpKey: PitchClass, position: number): PitchClass =>
  asPitchClass(harpKey + positionAt(position).offset);

/** The harp that puts a song key into a position: a song in A in 2nd needs a D harp. */
export const harpKeyFor = (song: PitchClass, position: number): PitchClass =>
  asPitchClass(song - positionAt(position).offset);

/** The position a harp is in when the song is in a key, 1–12. */
export const positionOf = (harpKey: PitchClass, song: PitchClass): number =>
  asPitchClass((song - harpKey) * 7) + 1;

const SUFFIXES: Readonly<Record<number, string>> = { 1: 'st', 2: 'nd', 3: 'rd' };

/** A position by its number alone: `2nd position`. */
export const positionNumber = (number: number): string => `${number}${SUFFIXES[number] ?? 'th'} position`;

/** A position in words: `2nd position (cross)`. */
export const positionTitle = (number: number): string => {
  const { name } = positionAt(number);
  return `${positionNumber(number)}${name === '' ? '' : ` (${name})`}`;
};
