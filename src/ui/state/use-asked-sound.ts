import { soundId } from '../../core/harp/tab';
import { useSelected } from './session-context';

/** The one note a warm-up asks for now, as a sound's id; null when it asks for none. */
export const useAskedSound = (): string | null =>
  useSelected((state) => {
    const sound = state.warmUp?.cue?.sound;
    return sound ? soundId(sound) : null;
  });
