import { useSyncExternalStore } from 'react';

/** Width below which the song's choices move behind a button: phones held upright. */
const NARROW = '(max-width: 699px)';

const subscribe = (listener: () => void): (() => void) => {
  const query = window.matchMedia(NARROW);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
};

/** True on a phone's width. */
export const useNarrow = (): boolean =>
  useSyncExternalStore(subscribe, () => window.matchMedia(NARROW).matches);
