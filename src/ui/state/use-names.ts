import { keyAt } from '../../core/chart/key-at';
import type { NoteName } from '../../core/theory/chord';
import { ENGLISH, type NoteNames } from '../../core/theory/note-names';
import { createFetched, useHere } from './fetched';
import { useSelected } from './session-context';

/** Names other than English ones: the first picture waits for them where they are chosen. */
const OTHER_NAMES = createFetched(() => import('../../core/theory/other-names'));

/**
 * What notes are called on the page, as the player chose: whatever shows a note, chord, key or harp asks this.
 * @param tonic what numbers count from; where it is left out, the key note in force in the bar being heard.
 */
export const useNames = (tonic?: NoteName): NoteNames => {
  const other = useHere(OTHER_NAMES);
  return useSelected(
    ({ settings, now }) =>
      other?.noteNames(settings.noteNames, tonic ?? keyAt(now.tune.chart, now.bar).tonic) ?? ENGLISH,
  );
};

/** The same for places in several keys: the names where a key note is in force. */
export const useNamesIn = (): ((tonic: NoteName) => NoteNames) => {
  const other = useHere(OTHER_NAMES);
  const system = useSelected((state) => state.settings.noteNames);
  return (tonic) => other?.noteNames(system, tonic) ?? ENGLISH;
};
