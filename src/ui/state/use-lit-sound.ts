import { type RefObject, useEffect } from 'react';
import { soundId } from '../../core/harp/tab';
import { useSelected } from './session-context';

/** The one note a warm-up asks for now, as a sound's id; null when it asks for none. */
export const useAskedSound = (): string | null =>
  useSelected((state) => {
    const sound = state.warmUp?.cue?.sound;
    return sound ? soundId(sound) : null;
  });

/** Lights the note that is asked for on a drawing of the harp. */
export const useLitSound = (drawing: RefObject<HTMLElement | null>): void => {
  const asked = useAskedSound();
  // After every rendering: another drawing has other pills.
  useEffect(() => {
    for (const pill of drawing.current?.querySelectorAll('[data-sound]') ?? []) {
      if (asked !== null && pill.getAttribute('data-sound') === asked)
        pill.setAttribute('data-asked', 'true');
      else pill.removeAttribute('data-asked');
    }
  });
};
