import { type BookSong, bookSong } from '../../core/book/book-song';
import {
  EXERCISES,
  earlierExercise,
  exerciseOf,
  type KeptExercise,
  parseKeptExercise,
  withStand,
} from '../../core/book/kept-exercise';
import { songText, withOwnChart } from '../../core/book/song-link';
import { printPhrase } from '../../core/phrase/print-phrase';
import { STARTER_CALLS, STARTER_EXERCISES, type StarterExercise } from '../../core/phrasebook/starter-set';
import type { Settings } from '../../core/settings/settings';
import { plainName } from '../../core/song/song-files';
import { asBpm } from '../../core/theory/units';
import type { FileSaver } from '../../storage/save-file';
import type { ChartCommands } from '../charts/charts';
import type { ChartsState } from '../charts/charts-state';
import { putSongOnStand } from '../charts/song-on-stand';
import type { Stand } from '../song/feature';
import type { SongState } from '../song/song-state';
import { giveFile, type KeptItems, openKeptItems } from './kept-items';
import type { ExerciseCommands, PhrasesState } from './phrases-state';

type Needs = Stand<PhrasesState & ChartsState & SongState, Pick<ChartCommands, 'keepChart'>>;

/** Exercises at work. */
export interface Exercises {
  readonly commands: ExerciseCommands;
  dispose(): void;
}

/** The stand with an exercise of the starter set on it: its music, its calls and its partner. */
const withStarter = (
  settings: Settings,
  { calls, partner, formId, feel, tempo }: StarterExercise,
): Settings => {
  const phrases = STARTER_CALLS.filter(({ name }) => calls.includes(name)).map(({ phrase }) => phrase);
  return {
    ...settings,
    ...{ formId, tempo: asBpm(tempo), style: { ...settings.style, feel } },
    trade: { on: true, calls: phrases.map((phrase) => printPhrase(phrase, 'signs')).join('\n') },
    partner: { ...settings.partner, stretch: false, ...partner },
  };
};

/** Copies an exercise of one's own, or of the starter set. */
const duplicate = ({ store }: Needs, items: KeptItems<KeptExercise>, id: string): void => {
  const { settings, ownCharts } = store.getState();
  const kept = items.find(id);
  const starter = STARTER_EXERCISES.find((each) => each.id === id);
  if (kept !== undefined) items.add({ ...kept, earlier: [] });
  else if (starter !== undefined) {
    const copy = exerciseOf(starter, withStarter(settings, starter), ownCharts);
    items.add({ ...copy, words: starter.about });
  }
};

/** Opens the player's exercises, and makes what is done with them. */
export const openExercises = (stand: Needs, saver: FileSaver | undefined): Exercises => {
  const { store, apply, board } = stand;
  const merge = (change: Partial<PhrasesState['phrasebook']>): void =>
    store.setState(({ phrasebook }) => ({ phrasebook: { ...phrasebook, ...change } }));
  const items = openKeptItems<KeptExercise>({
    ...{ stand, saver, kind: EXERCISES },
    onChange: (exercises) => merge({ exercises }),
  });
  const give = giveFile(board, saver);
  const ownCharts = () => store.getState().ownCharts;
  const change = (id: string, make: (kept: KeptExercise) => unknown): void => {
    const kept = items.find(id);
    const made = kept && parseKeptExercise(make(kept)).item;
    if (made) items.shelf.put(made);
  };
  const open = (song: BookSong | null | undefined): void => {
    if (song) putSongOnStand(stand, withOwnChart(song, ownCharts()));
  };
  const commands: ExerciseCommands = {
    openExercise: (exercise) => apply(withStarter(store.getState().settings, exercise)),
    keepExercise: ({ name, tags, words }) => {
      const { settings } = store.getState();
      const exercise = exerciseOf({ id: '', name: name.trim() || 'My exercise' }, settings, ownCharts());
      return items.add({ ...exercise, tags, words });
    },
    keepExerciseAgain: (id) => change(id, (kept) => withStand(kept, store.getState().settings, ownCharts())),
    changeExercise: (id, facts) =>
      change(id, (kept) => ({ ...kept, ...facts, name: facts.name?.trim() || kept.name })),
    duplicateExercise: (id) => duplicate(stand, items, id),
    dropExercise: (id) => {
      const exercise = items.drop(id);
      if (exercise !== null) merge({ dropped: { kind: 'exercise', item: exercise } });
    },
    restoreExercise: () => {
      const { dropped } = store.getState().phrasebook;
      if (dropped?.kind !== 'exercise') return;
      items.shelf.put(dropped.item);
      merge({ dropped: null });
    },
    openKeptExercise: (id) => open(items.find(id)),
    openEarlierExercise: (id, which) => {
      const kept = items.find(id);
      open(kept && earlierExercise(kept, which));
    },
    saveExercises: items.save,
    openExercises: async (text) => items.open(text),
    saveExercise: (name) => {
      const { settings } = store.getState();
      const text = songText(bookSong({ id: '', name }, settings, ownCharts()), settings);
      return give(
        `${plainName(name) || 'exercise'}.json`,
        'application/json',
        new TextEncoder().encode(text),
      );
    },
  };
  return { commands, dispose: items.shelf.dispose };
};
