import { keyAt } from '../../core/chart/key-at';
import type { NoteName } from '../../core/theory/chord';
import { useSelected } from './session-context';

/** The key note in force in the bar being heard: its section's, or else the song's. */
export const useTonic = (): NoteName => useSelected(({ now }) => keyAt(now.tune.chart, now.bar).tonic);
