import type { FitChord } from '../../core/fit/fit';
import { useSelected } from './session-context';

/** What fits the chord held on a keyboard; null while none is held, and the song is what is answered to. */
export const useHeldFit = (): FitChord | null => useSelected((state) => state.midi.fit);
