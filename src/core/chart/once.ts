import type { Chart } from './chart';

/** How many bars at the beginning of a chart belong to the first chorus alone; 0 where every chorus is the same. */
export const onceBars = ({ bars }: Pick<Chart, 'bars'>): number =>
  Math.max(
    0,
    bars.findIndex(({ place }) => place?.once !== true),
  );
