import { METERS } from '../../core/chart/build-chart';
import type { Phrase } from '../../core/phrase/phrase';
import { phraseLead } from '../../core/phrase/phrase-lead';
import { printPhrase } from '../../core/phrase/print-phrase';
import { type KeptPhrase, PHRASES, parseKeptPhrase, withNotes } from '../../core/phrasebook/kept-phrase';
import { STARTER_CALLS } from '../../core/phrasebook/starter-set';
import { asTicks } from '../../core/theory/units';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { leadSwing } from './judge-turn';
import { type KeptItems, openKeptItems } from './kept-items';
import { createLibraryFiles } from './library-files';
import type { PhraseFiles } from './phrase-files';
import type { LibraryCommands, PhrasesState } from './phrases-state';
import { playAlone } from './play-phrase';

type Needs = Stand<PhrasesState & Song>;

/** The library at work. */
export interface Library {
  readonly commands: LibraryCommands;
  dispose(): void;
}

type Keeping = 'keepPhrase' | 'changePhrase' | 'duplicatePhrase' | 'dropPhrase' | 'restorePhrase';

type Merge = (change: Partial<PhrasesState['phrasebook']>) => void;

const callText = (phrases: readonly Phrase[]): string =>
  phrases.map((phrase) => printPhrase(phrase, 'signs')).join('\n');

/** A phrase of the player's, or of the starter set. */
const phraseIn = (items: KeptItems<KeptPhrase>, id: string): KeptPhrase | undefined =>
  items.find(id) ?? STARTER_CALLS.find((each) => each.id === id);

const createKeeping = (
  { store }: Needs,
  items: KeptItems<KeptPhrase>,
  merge: Merge,
): Pick<LibraryCommands, Keeping> => ({
  keepPhrase: ({ name, phrase, level, words = '', tags = [] }) => {
    const { position } = store.getState().settings;
    return items.add({ name: name.trim() || 'My phrase', phrase, position, level, words, tags, earlier: [] });
  },
  changePhrase: (id, { phrase, ...change }) => {
    const before = items.find(id);
    if (before === undefined) return;
    const changed = parseKeptPhrase({ ...before, ...change }).item ?? before;
    items.shelf.put(phrase === undefined ? changed : withNotes(changed, phrase));
  },
  duplicatePhrase: (id) => {
    const phrase = phraseIn(items, id);
    return phrase === undefined ? null : items.add({ ...phrase, earlier: [] });
  },
  dropPhrase: (id) => {
    const phrase = items.drop(id);
    if (phrase !== null) merge({ dropped: { kind: 'phrase', item: phrase } });
  },
  restorePhrase: () => {
    const { dropped } = store.getState().phrasebook;
    if (dropped?.kind !== 'phrase') return;
    items.shelf.put(dropped.item);
    merge({ dropped: null });
  },
});

/** Opens the player's phrases, and makes what is done with them. */
export const openLibrary = (stand: Needs, files: PhraseFiles | undefined): Library => {
  const { store, apply } = stand;
  const merge: Merge = (change) =>
    store.setState(({ phrasebook }) => ({ phrasebook: { ...phrasebook, ...change } }));
  const items = openKeptItems<KeptPhrase>({
    ...{ stand, kind: PHRASES, saver: files?.saver },
    onChange: (phrases) => merge({ phrases }),
  });
  let stopPlaying = (): void => {};
  const commands: LibraryCommands = {
    ...createKeeping(stand, items, merge),
    ...createLibraryFiles({ stand, items, files }),
    callWith: (ids) => {
      const calls = callText(ids.flatMap((id) => phraseIn(items, id)?.phrase ?? []));
      apply({ ...store.getState().settings, trade: { on: true, calls } });
    },
    chooseHandOut: (handOut) => merge({ handOut }),
    hearPhrase: (phrase) => {
      stopPlaying();
      const { settings, now, status } = store.getState();
      if (status.kind === 'playing') return;
      const place = { harp: now.tune.harp, at: asTicks(0), swing: leadSwing({ settings }) };
      const perTick = 60 / (settings.tempo * METERS[phrase.meter].beatTicks);
      stopPlaying = playAlone(stand, phraseLead(phrase, place), perTick, () => {});
    },
  };
  return {
    commands,
    dispose: () => {
      stopPlaying();
      items.shelf.dispose();
    },
  };
};
