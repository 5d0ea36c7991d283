/** Who wants to hear of what a device has to tell. */
export interface Listeners<Value> {
  /** Returns what ends the subscription. */
  add(listener: (value: Value) => void): () => void;
  tell(value: Value): void;
}

/** Creates an empty list of listeners. */
export const createListeners = <Value>(): Listeners<Value> => {
  const all = new Set<(value: Value) => void>();
  return {
    add: (listener) => {
      all.add(listener);
      return () => all.delete(listener);
    },
    tell: (value) => {
      for (const listener of [...all]) listener(value);
    },
  };
};
