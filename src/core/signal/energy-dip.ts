/** A stretch just before the latest hop in which the sound was much softer than it is now. */
export interface EnergyDip {
  /** Hops from the latest back to the last of the stretch, 1 or more. */
  readonly back: number;
  /** How much of one hop's sound of then is likely to be in a hop of now: less, the longer ago. */
  readonly share: number;
  /** Energy of the stretch, as a mean of its hops. */
  readonly energy: number;
}

/** Hops of the stretch: one alone may lie between two pulses of a low reed. */
export const DIP_HOPS = 2;
/** Ratio of powers from which on something new sounds: 4 dB, more than noise rises by from hop to hop (tried on generated takes). */
const RISE = 2.5;
/** What sounded before fades by so much a hop: 0.7 dB in 5.3 ms, as in a room of T60 = 0.45 s. */
const FADING = 0.85;

/** Notices when a sound has risen over what was before. One for each stream. */
export interface DipFinder {
  /** Takes the energy of the next hop; returns the dip before it, null where nothing has risen. */
  add(energy: number): EnergyDip | null;
}

/** Looks back over so many hops, the latest included. */
export const createDipFinder = (hops: number): DipFinder => {
  /** The latest first. */
  const energies = new Float64Array(hops);
  return {
    add(energy) {
      energies.copyWithin(1, 0, hops - 1);
      energies[0] = energy;
      let least = Number.POSITIVE_INFINITY;
      let back = 0;
      for (let at = 1; at + DIP_HOPS <= hops; at += 1) {
        let sum = 0;
        for (let i = 0; i < DIP_HOPS; i += 1) sum += energies[at + i] ?? 0;
        if (sum < least) [least, back] = [sum, at];
      }
      const mean = least / DIP_HOPS;
      return energy > RISE * mean ? { back, share: FADING ** back, energy: mean } : null;
    },
  };
};
