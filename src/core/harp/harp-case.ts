import { isRecord } from '../theory/is-record';
import { keptText } from '../theory/kept-text';
import { asReferencePitch, REFERENCE_PITCHES, STANDARD_PITCH } from '../theory/temperament';
import { asPitchClass, type Hz, type PitchClass } from '../theory/units';
import { buildHarp, type ReedCents } from './build-harp';
import { cutName, parseTuning } from './custom-tuning';
import type { Harp, Tuning } from './harp';
import { type IntonationId, intonate, isIntonationId } from './intonation';

/** A harp the player owns. */
export interface OwnedHarp {
  readonly id: string;
  readonly name: string;
  readonly tuning: Tuning;
  readonly key: PitchClass;
  /** 0 usual, −1 low, −2 double low, +1 high. */
  readonly octave: number;
  /** A published intonation, or cents of the player's own per reed. */
  readonly intonation: IntonationId | { readonly cents: ReedCents };
  /** A4 of this harp, 440–446 Hz. */
  readonly reference: Hz;
  /** Octave stretch in cents an octave, 0–`STRETCH.most`. */
  readonly stretch: number;
  /** Half-valved holes: the lower reed bends by itself there. */
  readonly valved: readonly number[];
}

/** Largest deviation of a reed kept, in cents. */
export const REED_CENTS = 100;

/** Octave stretch on offer, in cents an octave; two is one tuner's advice (tuning02.php, ohw.se, 2004). */
export const STRETCH = { least: 0, most: 10 } as const;

/** The instrument itself. */
export const buildOwnedHarp = ({ tuning, key, octave, intonation, stretch, valved }: OwnedHarp): Harp =>
  buildHarp({
    tuning,
    key,
    octave,
    cents: typeof intonation === 'string' ? intonate(tuning, intonation).cents : intonation.cents,
    stretch,
    valved,
  });

/** A case read from outside and what had to be repaired or left out. */
export interface ParsedCase {
  readonly harps: readonly OwnedHarp[];
  /** Sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

/** Most harps kept in a case. */
export const CASE_SIZE = 200;

const isWhole = (value: unknown, low: number, high: number): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= low && value <= high;

const isCents = (value: unknown, holes: number): value is readonly number[] =>
  Array.isArray(value) &&
  value.length === holes &&
  value.every((each) => typeof each === 'number' && Math.abs(each) <= REED_CENTS);

const readIntonation = (value: unknown, holes: number): OwnedHarp['intonation'] | null => {
  if (typeof value === 'string') return isIntonationId(value) ? value : null;
  if (!isRecord(value) || !isRecord(value.cents)) return null;
  const { blow, draw } = value.cents;
  return isCents(blow, holes) && isCents(draw, holes)
    ? { cents: { blow: [...blow], draw: [...draw] } }
    : null;
};

const readReference = (value: unknown): Hz | null =>
  typeof value === 'number' && value >= REFERENCE_PITCHES.low && value <= REFERENCE_PITCHES.high
    ? asReferencePitch(value)
    : null;

/** Cases kept before there was a stretch have none. */
const readStretch = (value: unknown): number | null => {
  if (value === undefined) return 0;
  return typeof value === 'number' && value >= STRETCH.least && value <= STRETCH.most ? value : null;
};

const readValved = (value: unknown, holes: number): readonly number[] | null =>
  Array.isArray(value) && value.every((hole) => isWhole(hole, 1, holes))
    ? [...new Set<number>(value)].sort((a, b) => a - b)
    : null;

interface ReadHarp {
  readonly harp: OwnedHarp | null;
  readonly problems: readonly string[];
}

const readHarp = (value: unknown, index: number): ReadHarp => {
  const which = `Harp ${index + 1} of the case`;
  if (!isRecord(value) || !isWhole(value.key, 0, 11)) {
    return { harp: null, problems: [`${which} has no readable key and was left out; add it again.`] };
  }
  const { tuning, problems } = parseTuning(value.tuning);
  const holes = tuning.blow.length;
  const intonation = readIntonation(value.intonation, holes);
  const reference = readReference(value.reference);
  const stretch = readStretch(value.stretch);
  const valved = readValved(value.valved, holes);
  const octave = isWhole(value.octave, -2, 1) ? value.octave : null;
  const harp: OwnedHarp = {
    id: keptText(value.id) || `harp-${index + 1}`,
    name: keptText(value.name),
    tuning,
    key: asPitchClass(value.key),
    octave: octave ?? 0,
    intonation: intonation ?? 'equal',
    reference: reference ?? STANDARD_PITCH,
    stretch: stretch ?? 0,
    valved: valved ?? [],
  };
  const repaired: readonly (readonly [boolean, string])[] = [
    [octave === null, 'its octave could not be read; taken as the usual one.'],
    [intonation === null, 'its reed cents could not be read; taken as equal temperament.'],
    [reference === null, 'its reference pitch could not be read; taken as 440 Hz.'],
    [stretch === null, 'its octave stretch could not be read; taken as none.'],
    [valved === null, 'its valves could not be read; taken as none.'],
  ];
  return {
    harp,
    problems: [
      ...cutName(value.name, 'harp').map((problem) => `${which}: ${problem}`),
      ...(value.name === undefined || typeof value.name === 'string'
        ? []
        : [`${which}: its name could not be read; it has none now.`]),
      ...problems.map((problem) => `${which}: ${problem}`),
      ...repaired.flatMap(([needed, sentence]) => (needed ? [`${which}: ${sentence}`] : [])),
    ],
  };
};

/** Two harps of one id would overwrite each other: later ones get a number. */
const withUniqueIds = (harps: readonly OwnedHarp[]): readonly OwnedHarp[] => {
  const taken = new Set<string>();
  return harps.map((harp) => {
    let id = harp.id;
    for (let n = 2; taken.has(id); n += 1) id = `${harp.id.slice(0, 70)}-${n}`;
    taken.add(id);
    return { ...harp, id };
  });
};

/** Reads a harp case from storage or a link. Never throws: it keeps every harp with a readable key and reports the rest. */
export const parseHarpCase = (value: unknown): ParsedCase => {
  if (!Array.isArray(value)) {
    return { harps: [], problems: ['The harp case could not be read; it starts empty.'] };
  }
  const given: readonly unknown[] = value;
  const read = given.slice(0, CASE_SIZE).map(readHarp);
  return {
    harps: withUniqueIds(read.flatMap(({ harp }) => harp ?? [])),
    problems: [
      ...read.flatMap(({ problems }) => problems),
      ...(given.length > CASE_SIZE ? [`Only the first ${CASE_SIZE} harps of the case were kept.`] : []),
    ],
  };
};
