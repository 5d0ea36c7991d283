/** Who uses the audio context besides the band. */
export interface Loans {
  /** True while anybody does. */
  any(): boolean;
  /** Takes a loan; returns what gives it back, however often it is called. */
  take(): () => void;
}

/** No loans yet. `onNone` is called whenever the last is given back. */
export const createLoans = (onNone: () => unknown): Loans => {
  const taken = new Set<symbol>();
  return {
    any: () => taken.size > 0,
    take: () => {
      const loan = Symbol('loan');
      taken.add(loan);
      return () => {
        if (taken.delete(loan) && taken.size === 0) onNone();
      };
    },
  };
};
