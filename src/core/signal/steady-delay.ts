/** A delay that is looked at again and again, believed once looks agree. */
export interface SteadyDelay {
  take(samples: number): void;
  /** Samples; null while looks are few, or differ. */
  now(): number | null;
}

/** Looks remembered (each is of a third of a second), those that must be there, and those that must agree. */
const LOOKS = { most: 7, least: 3, agree: 3 } as const;
/** Looks agree that are no further apart. Samples: 1 ms at 24 kHz. */
const APART = 24;

/** Believes the latest delay that enough of the latest looks agree on: a look at a reflection, or too soon, is passed over. */
export const createSteadyDelay = (): SteadyDelay => {
  const looks: number[] = [];
  let believed: number | null = null;
  return {
    take(samples) {
      looks.push(samples);
      if (looks.length > LOOKS.most) looks.shift();
      const agreeing = looks.filter((look) => Math.abs(look - samples) <= APART);
      if (looks.length < LOOKS.least || agreeing.length < LOOKS.agree) return;
      const sorted = agreeing.toSorted((a, b) => a - b);
      believed = sorted[sorted.length >> 1] ?? believed;
    },
    now: () => believed,
  };
};
