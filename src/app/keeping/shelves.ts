import { parseTuning } from '../../core/harp/custom-tuning';
import type { Tuning } from '../../core/harp/harp';
import { type OwnedHarp, parseHarpCase } from '../../core/harp/harp-case';
import type { KeptValues } from '../../storage/kept-values';
import type { Slice } from '../slice';
import type { Keeper } from './keeper';
import type { KeepingState } from './keeping-state';
import type { Notice } from './notice';
import { openShelf, type ReadItem, type Shelf } from './shelf';

/** What the page can ask for about things the player made or owns. */
export interface ShelfCommands {
  /** Puts a harp into the case, or changes the one with its id. */
  keepHarp(harp: OwnedHarp): void;
  dropHarp(id: string): void;
  keepTuning(tuning: Tuning): void;
  dropTuning(id: string): void;
}

/** The case of harps and the tunings a player made, open for changes. */
export interface Shelves {
  readonly commands: ShelfCommands;
  dispose(): void;
}

const parseHarp = (value: unknown): ReadItem<OwnedHarp> => {
  const { harps, problems } = parseHarpCase([value]);
  return { item: harps[0] ?? null, problems };
};

const parseOwnTuning = (value: unknown): ReadItem<Tuning> => {
  const { tuning, problems } = parseTuning(value);
  return { item: tuning, problems };
};

interface Options {
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  readonly store: Slice<KeepingState>;
  readonly post: (notice: Notice) => void;
}

/** Opens the player's shelves and keeps the page's copy of them up to date. */
export const openShelves = ({ kept, keeper, store, post }: Options): Shelves => {
  const harps: Shelf<OwnedHarp> = openShelf({
    kept,
    keeper,
    name: 'harps',
    noun: 'harp',
    parse: parseHarp,
    onChange: (harpCase) => store.setState({ harpCase }),
    onNotice: post,
  });
  const tunings: Shelf<Tuning> = openShelf({
    kept,
    keeper,
    name: 'tunings',
    noun: 'tuning',
    parse: parseOwnTuning,
    onChange: (ownTunings) => store.setState({ ownTunings }),
    onNotice: post,
  });
  store.setState({ harpCase: harps.items(), ownTunings: tunings.items() });
  return {
    commands: {
      keepHarp: harps.put,
      dropHarp: harps.remove,
      keepTuning: tunings.put,
      dropTuning: tunings.remove,
    },
    dispose: () => {
      harps.dispose();
      tunings.dispose();
    },
  };
};
