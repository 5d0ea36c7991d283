import { useMemo } from 'react';
import { soundId } from '../../core/harp/tab';
import { useSelected } from './session-context';
import { useCallNote } from './use-call-note';

/** Ids of the sounds to play now: the one note a warm-up asks for, or those of a call as they come. */
export const useLitSounds = (): readonly string[] => {
  const asked = useSelected((state) => state.warmUp?.cue?.sound ?? null);
  const called = useCallNote();
  return useMemo(() => (asked === null ? called : [asked]).map(soundId), [asked, called]);
};
