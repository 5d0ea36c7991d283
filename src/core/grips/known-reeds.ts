/** What was learnt of a harp’s reeds, as it is kept from one day to the next. */
import { isRecord } from '../theory/is-record';

/** What is known of the harmonics of one reed. */
export interface KnownReed {
  /** The sound’s id, as `soundId` writes it. */
  readonly id: string;
  /** Level of each harmonic re the reed’s own, dB. */
  readonly levels: readonly number[];
  /** Windows of sound that each was heard in. */
  readonly windows: readonly number[];
}

/** What is known of the reeds of one harp, at one microphone. */
export interface KnownReeds {
  /** What all reeds have in common, by number of harmonic and by band of frequency: dB off what is usual. */
  readonly common: readonly number[];
  readonly colour: readonly number[];
  readonly reeds: readonly KnownReed[];
}

/** Longer lists are nothing that was ever kept: harmonics and bands, and reeds. */
const MOST = { entries: 40, reeds: 40 } as const;
/** Levels beyond this no microphone told, dB; and more windows than this are not counted. */
const BOUNDS = { level: 120, windows: 1000 } as const;
const LONGEST_ID = 8;

/** A list of numbers in their bounds; null for anything else. */
const numbersOf = (value: unknown, low: number, high: number): readonly number[] | null =>
  Array.isArray(value) &&
  value.length <= MOST.entries &&
  value.every((each) => typeof each === 'number' && each >= low && each <= high)
    ? [...value]
    : null;

const levelsOf = (value: unknown): readonly number[] | null => numbersOf(value, -BOUNDS.level, BOUNDS.level);

const reedOf = (value: unknown): KnownReed | null => {
  if (!isRecord(value) || typeof value.id !== 'string' || value.id.length > LONGEST_ID) return null;
  const levels = levelsOf(value.levels);
  const windows = numbersOf(value.windows, 0, BOUNDS.windows);
  return levels === null || windows === null || levels.length !== windows.length
    ? null
    : { id: value.id, levels, windows };
};

/** Reads what was kept of a harp’s reeds. Never throws: null where it is nothing of the kind; reeds it cannot read are left out. */
export const parseKnownReeds = (
  value: unknown,
): { readonly known: KnownReeds | null; readonly problems: readonly string[] } => {
  const lost = { known: null, problems: ['What was learnt of a harp’s reeds could not be read.'] };
  if (!isRecord(value) || !Array.isArray(value.reeds)) return lost;
  const [common, colour] = [levelsOf(value.common), levelsOf(value.colour)];
  if (common === null || colour === null) return lost;
  const given: readonly unknown[] = value.reeds;
  const reeds = given.slice(0, MOST.reeds).flatMap((each) => reedOf(each) ?? []);
  return {
    known: { common, colour, reeds },
    problems:
      reeds.length === given.length
        ? []
        : ['What was learnt of some reeds of a harp could not be read; they are learnt anew.'],
  };
};
