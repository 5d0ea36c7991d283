import type { Problem } from '../../src/core/chart-text/chart-problems';

/** A problem as one line. */
export const problemSentence = ({ line, column, what, advice }: Problem): string =>
  `Line ${line}, column ${column}: ${what} ${advice}`;
