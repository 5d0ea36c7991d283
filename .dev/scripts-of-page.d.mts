import type { Rolldown } from 'vite';

/** Groups of modules that go into one script each: what the first picture needs, and then what carries commands out. */
export const SCRIPTS: Rolldown.CodeSplittingGroup[];
