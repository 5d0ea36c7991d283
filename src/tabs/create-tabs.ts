import { createListeners } from '../listeners/listeners';
import type { Teller } from '../listeners/teller';

/** What the page's tabs tell one another: that the band has begun to play in one of them. */
export interface Tabs {
  /** Tells the other tabs that it begins to play here. */
  begin(): void;
  /** Called back when it has begun in another tab since it last did here. Returns the unsubscriber. */
  onOther(listener: () => void): () => void;
  dispose(): void;
}

/** When it began in another tab; null where what was told is not of this program's making. */
const parseBegun = (data: unknown): number | null =>
  typeof data === 'object' && data !== null && 'begun' in data && typeof data.begun === 'number'
    ? data.begun
    : null;

/**
 * @param teller tells the other tabs; without one no tab knows of another.
 * @param now a time that all tabs share, in ms.
 */
export const createTabs = (teller: Teller | undefined, now: () => number): Tabs => {
  const others = createListeners<void>();
  let begun = Number.NEGATIVE_INFINITY;
  const hear = ({ data }: MessageEvent<unknown>): void => {
    const other = parseBegun(data);
    // Of two that begin at once, the later one plays on.
    if (other !== null && other > begun) others.tell();
  };
  teller?.addEventListener('message', hear);
  return {
    begin: () => {
      begun = now();
      teller?.postMessage({ begun });
    },
    onOther: others.add,
    dispose: () => teller?.removeEventListener('message', hear),
  };
};
