/** Powers of the latest hops. */
export interface RecentPower {
  /** Takes the next hop in. */
  push(hop: Float64Array): void;
  /** Mean square of the last so many hops. */
  mean(hops: number): number;
  /** Middle of the energy of the last so many hops, in samples before their end. */
  centroid(hops: number): number;
  /** Ratio of the power of the latest hop to that of the one before. */
  rise(): number;
}

/** Keeps the powers of so many hops of so many samples each, one number a hop. */
export const createRecentPower = (hops: number, size: number): RecentPower => {
  const powers = new Float64Array(Math.max(2, hops));
  const last = powers.length - 1;
  return {
    push(hop) {
      let sum = 0;
      for (let i = 0; i < size; i += 1) sum += (hop[i] ?? 0) * (hop[i] ?? 0);
      powers.copyWithin(0, 1);
      powers[last] = sum / size;
    },
    mean(count) {
      let sum = 0;
      for (let i = 0; i < count; i += 1) sum += powers[last - i] ?? 0;
      return sum / count;
    },
    centroid(count) {
      let sum = 1e-20;
      let moment = sum * count * 0.5;
      for (let i = 0; i < count; i += 1) {
        const power = powers[last - i] ?? 0;
        sum += power;
        moment += power * (i + 0.5);
      }
      return (moment / sum) * size;
    },
    rise: () => (powers[last] ?? 0) / ((powers[last - 1] ?? 0) + 1e-30),
  };
};
