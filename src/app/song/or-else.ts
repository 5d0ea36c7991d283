/**
 * What a reading gives, or something else where it throws: readers of what players type are total as far as anybody
 * knows, and one that is not must not take the typing with it.
 */
export const orElse = <T>(read: () => T, otherwise: () => T): T => {
  try {
    return read();
  } catch {
    return otherwise();
  }
};
