import type { Lasting, LastingStorage } from '../../src/storage/lasting';

/** Storage whose browser says what it is told to say, and counts how often it was asked. */
export const createFakeLasting = (is: Lasting, answer: Lasting): LastingStorage & { asked(): number } => {
  let asked = 0;
  let now = is;
  return {
    state: async () => now,
    ask: async () => {
      asked += 1;
      now = answer;
      return now;
    },
    asked: () => asked,
  };
};
