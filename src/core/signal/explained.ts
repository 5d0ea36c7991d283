/** Added to what a pitch leaves unexplained, since no sound repeats exactly. */
export const UNSTEADY = 0.1;

/** Share of a band's energy that a pitch leaves unexplained. */
export const unexplained = (likeness: number): number => {
  const like = Math.max(0, Math.min(1, likeness));
  return 1 + UNSTEADY - like * like;
};

const TABLE_SIZE = 2048;
const EXPLAINED = Float64Array.from(
  { length: TABLE_SIZE + 1 },
  (_, i) => -Math.log(unexplained(i / TABLE_SIZE)),
);
/** What a band says of a pitch by its likeness there, in steps: a logarithm a pitch is dear. */
export const explained = (likeness: number): number =>
  EXPLAINED[likeness > 0 ? Math.min(TABLE_SIZE, (likeness * TABLE_SIZE + 0.5) | 0) : 0] ?? 0;
