import type { FontAnswer, FontRequest } from './font-messages';

/** The part of a worker that SoundFonts use. */
export interface FontWorker {
  postMessage(request: FontRequest): void;
  onmessage: ((message: MessageEvent<FontAnswer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Starts a worker that plays from a SoundFont. */
export const createFontWorker = (): FontWorker =>
  new Worker(new URL('./font-worker.ts', import.meta.url), { type: 'module' });
