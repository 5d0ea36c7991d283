import { advise } from '../fit/advice';
import { harpName } from '../fit/advice-words';
import type { Harp } from '../harp/harp';
import { buildOwnedHarp, type OwnedHarp } from '../harp/harp-case';
import { positionTitle } from '../harp/positions';
import type { TechniqueChoice } from '../harp/reach';
import { sameNotes } from '../harp/same-harp';
import type { SongFacts } from './song-facts';

/** A song of a set with what it comes to. */
export interface SetSong {
  readonly id: string;
  readonly name: string;
  readonly facts: SongFacts;
}

/** A harp to lay out, with the songs it is for. */
export interface LaidOut {
  readonly harp: Harp;
  /** `C harp`, ASCII accidentals. */
  readonly name: string;
  /** Names of its songs, in the order of the set, each once. */
  readonly songs: readonly string[];
  /** Whether a harp with these notes is in the case. */
  readonly owned: boolean;
}

/** The harps of a set in the order they are first needed. @param harpCase the harps the player owns. */
export const harpsOfSet = (songs: readonly SetSong[], harpCase: readonly OwnedHarp[]): readonly LaidOut[] => {
  const owned = harpCase.map(buildOwnedHarp);
  const harps: { harp: Harp; songs: string[] }[] = [];
  for (const { name, facts } of songs) {
    const known = harps.find(({ harp }) => sameNotes(harp, facts.harp));
    if (known === undefined) harps.push({ harp: facts.harp, songs: [name] });
    else if (!known.songs.includes(name)) known.songs.push(name);
  }
  return harps.map(({ harp, songs: names }) => ({
    harp,
    name: harpName(harp),
    songs: names,
    owned: owned.some((each) => sameNotes(each, harp)),
  }));
};

/** What a song of the set could be played on instead of a harp that is not in the case. */
export interface Replacement {
  readonly song: string;
  /** The harp that is missing, and the one of the case that stands in for it; `null` where the case is empty. */
  readonly missing: string;
  readonly instead: { readonly harp: string; readonly position: string; readonly why: string } | null;
}

/** For every song whose harp is not in the case, the harp of the case that reaches most of it. */
export const replacementsOf = (
  songs: readonly SetSong[],
  harpCase: readonly OwnedHarp[],
  technique: TechniqueChoice,
): readonly Replacement[] => {
  const owned = harpCase.map(buildOwnedHarp);
  return songs
    .filter(({ facts }) => !owned.some((harp) => sameNotes(harp, facts.harp)))
    .map(({ name, facts }) => {
      const [best] = owned.length === 0 ? [] : advise({ chart: facts.chart, harps: owned, technique });
      return {
        song: name,
        missing: facts.harpName,
        instead:
          best === undefined
            ? null
            : {
                harp: harpName(best.harp),
                position: positionTitle(best.position),
                why: best.reasons[0]?.split(': ').slice(1).join(': ') ?? '',
              },
      };
    });
};

/** How often the harp changes from one song to the next. */
export const harpSwaps = (songs: readonly SetSong[]): number =>
  songs.filter((song, index) => {
    const before = songs[index - 1];
    return before !== undefined && !sameNotes(before.facts.harp, song.facts.harp);
  }).length;

/**
 * The order that changes harps least, as indices of the songs given: songs of one harp follow each other, and harps
 * and songs keep the order they have, so that what the player thought of stays as far as it can.
 */
export const fewestSwaps = (songs: readonly SetSong[]): readonly number[] => {
  const groups: { harp: Harp; indices: number[] }[] = [];
  for (const [index, { facts }] of songs.entries()) {
    const known = groups.find(({ harp }) => sameNotes(harp, facts.harp));
    if (known === undefined) groups.push({ harp: facts.harp, indices: [index] });
    else known.indices.push(index);
  }
  return groups.flatMap(({ indices }) => indices);
};
