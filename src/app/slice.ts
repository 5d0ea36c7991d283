/**
 * The part of the page's state that a feature reads, and of that what it writes. The store is one for all features;
 * each sees of it what it names here, so that none needs to know what the others are.
 */
export interface Slice<Read, Written = Read> {
  getState(): Read;
  setState(change: Partial<Written> | ((now: Read) => Partial<Written>)): void;
  /** Calls back after every change of the whole state. Returns the unsubscriber. */
  subscribe(listener: (now: Read) => void): () => void;
}
