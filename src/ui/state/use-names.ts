import { keyAt } from '../../core/chart/key-at';
import type { NoteName } from '../../core/theory/chord';
import { type NoteNames, noteNames } from '../../core/theory/note-names';
import { useSelected } from './session-context';

/**
 * What notes are called on the page, as the player chose: whatever shows a note, chord, key or harp asks this.
 * @param tonic what numbers count from; where it is left out, the key note in force in the bar being heard.
 */
export const useNames = (tonic?: NoteName): NoteNames =>
  useSelected(({ settings, now }) =>
    noteNames(settings.noteNames, tonic ?? keyAt(now.tune.chart, now.bar).tonic),
  );
