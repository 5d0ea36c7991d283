/** Largest one-to-one matching. */

/**
 * Pairs as many as can be of two lists, `partners[i]` holding what entry i of the first may be paired with (indices of
 * the second), by augmenting paths (H. W. Kuhn, "The Hungarian method for the assignment problem", 1955, for equal
 * costs). Returns pairs in the order of the first list.
 */
export const largestMatching = (
  partners: readonly (readonly number[])[],
): readonly (readonly [number, number])[] => {
  const takenBy = new Map<number, number>();
  const augment = (i: number, seen: Set<number>): boolean => {
    for (const j of partners[i]) {
      if (seen.has(j)) continue;
      seen.add(j);
      const owner = takenBy.get(j);
      if (owner === undefined || augment(owner, seen)) {
        takenBy.set(j, i);
        return true;
      }
    }
    return false;
  };
  partners.forEach((_, i) => {
    augment(i, new Set());
  });
  return [...takenBy].map(([j, i]) => [i, j] as const).sort(([a], [b]) => a - b);
};
