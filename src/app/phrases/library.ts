import { METERS } from '../../core/chart/build-chart';
import type { Phrase } from '../../core/phrase/phrase';
import { phraseLead } from '../../core/phrase/phrase-lead';
import { printPhrase } from '../../core/phrase/print-phrase';
import { type KeptPhrase, parseKeptPhrase, withNotes } from '../../core/phrasebook/kept-phrase';
import { STARTER_CALLS, type StarterExercise } from '../../core/phrasebook/starter-set';
import type { Settings } from '../../core/settings/settings';
import { freshName } from '../../core/song/chart-drafts';
import { asBpm, asTicks } from '../../core/theory/units';
import { openShelf, type Shelf } from '../keeping/shelf';
import type { Stand } from '../song/feature';
import type { Song } from '../song/song-state';
import { leadSwing } from './judge-turn';
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
const findIn = (shelf: Shelf<KeptPhrase>, id: string): KeptPhrase | undefined =>
  [...shelf.items(), ...STARTER_CALLS].find((each) => each.id === id);

const createKeeping = (
  { store, newSeed }: Needs,
  shelf: Shelf<KeptPhrase>,
  merge: Merge,
): Pick<LibraryCommands, Keeping> => {
  const add = (phrase: Omit<KeptPhrase, 'id'>): string => {
    const id = `phrase-${newSeed()}`;
    const names = shelf.items().map((each) => each.name);
    shelf.put({ ...phrase, id, name: freshName(phrase.name, names) });
    return id;
  };
  return {
    keepPhrase: ({ name, phrase, level, words = '', tags = [] }) => {
      const { position } = store.getState().settings;
      return add({ name: name.trim() || 'My phrase', phrase, position, level, words, tags, earlier: [] });
    },
    changePhrase: (id, { phrase, ...change }) => {
      const before = shelf.items().find((each) => each.id === id);
      if (before === undefined) return;
      const changed = parseKeptPhrase({ ...before, ...change }).item ?? before;
      shelf.put(phrase === undefined ? changed : withNotes(changed, phrase));
    },
    duplicatePhrase: (id) => {
      const phrase = findIn(shelf, id);
      return phrase === undefined ? null : add({ ...phrase, earlier: [] });
    },
    dropPhrase: (id) => {
      const dropped = shelf.items().find((each) => each.id === id);
      shelf.remove(id);
      if (dropped !== undefined) merge({ dropped });
    },
    restorePhrase: () => {
      const { dropped } = store.getState().phrasebook;
      if (dropped !== null) shelf.put(dropped);
      merge({ dropped: null });
    },
  };
};

/** Opens the player's phrases, and makes what is done with them. */
export const openLibrary = (stand: Needs, files: PhraseFiles | undefined): Library => {
  const { kept, keeper, store, board, apply } = stand;
  const merge: Merge = (change) =>
    store.setState(({ phrasebook }) => ({ phrasebook: { ...phrasebook, ...change } }));
  const shelf = openShelf<KeptPhrase>({
    ...{ kept, keeper, name: 'phrases', noun: 'phrase', parse: parseKeptPhrase },
    onChange: (phrases) => merge({ phrases }),
    onNotice: board.post,
  });
  merge({ phrases: shelf.items() });
  let stopPlaying = (): void => {};
  const commands: LibraryCommands = {
    ...createKeeping(stand, shelf, merge),
    ...createLibraryFiles({ stand, shelf, files }),
    callWith: (ids) => {
      const calls = callText(ids.flatMap((id) => findIn(shelf, id)?.phrase ?? []));
      apply({ ...store.getState().settings, trade: { on: true, calls } });
    },
    openExercise: (exercise) => apply(withExercise(store.getState().settings, exercise)),
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
      shelf.dispose();
    },
  };
};

/** The stand with an exercise on it: its music, its calls and its partner. */
const withExercise = (
  settings: Settings,
  { calls, partner, formId, feel, tempo }: StarterExercise,
): Settings => {
  const phrases = STARTER_CALLS.filter(({ name }) => calls.includes(name)).map(({ phrase }) => phrase);
  return {
    ...settings,
    ...{ formId, tempo: asBpm(tempo), style: { ...settings.style, feel } },
    trade: { on: true, calls: callText(phrases) },
    partner: { ...settings.partner, stretch: false, ...partner },
  };
};
