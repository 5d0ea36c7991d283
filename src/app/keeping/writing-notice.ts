import type { Writing } from '../../storage/kept-values';
import type { Notice } from './notice';

/** The id of what is said while nothing can be kept. */
export const STORAGE_NOTICE = 'storage';

/** What to tell the player when something could not be kept; `null` when it was. */
export const writingNotice = (writing: Writing): Notice | null => {
  if (writing.kind === 'written') return null;
  const why =
    writing.kind === 'full'
      ? 'The browser’s storage for this page is full: what you change holds until you close the page. Free some site data, or delete kept copies under Help, Care'
      : 'The browser does not let this page keep anything: what you change holds until you close the page. Allow site data for it';
  return { id: STORAGE_NOTICE, tone: 'trouble', text: `${why}; the page tries again by itself.` };
};
