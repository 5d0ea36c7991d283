import { useSyncExternalStore } from 'react';

/** Where the song's choices and the ways to the panels move behind a button: phones, held upright or lying. */
const NARROW = '(max-width: 699px), (max-height: 560px)';

const subscribe = (listener: () => void): (() => void) => {
  const query = window.matchMedia(NARROW);
  query.addEventListener('change', listener);
  return () => query.removeEventListener('change', listener);
};

/** True on a phone. */
export const useNarrow = (): boolean =>
  useSyncExternalStore(subscribe, () => window.matchMedia(NARROW).matches);
