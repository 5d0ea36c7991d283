import { useEffect } from 'react';

/** The entry of the browser's history that stands for what is open. */
const OPEN = 'open';

/**
 * Closes what is open when the player goes back, as one does on a phone: without it the page is left, and the band with
 * it. One entry of the history is laid down for it and stays, so that closing by other ways goes nowhere.
 */
export const useBack = (close: () => void): void => {
  useEffect(() => {
    if (window.history.state !== OPEN) window.history.pushState(OPEN, '');
    window.addEventListener('popstate', close);
    return () => window.removeEventListener('popstate', close);
  }, [close]);
};
