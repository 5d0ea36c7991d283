import { createRandom } from '../../core/theory/random';
import type { ModeRow } from './drum-modes';
import type { Cluster, NoiseRow } from './drum-recipe';

/** Level and T60 of the ring at a frequency, between the rows of the table (linear over octaves; ends held). */
const ringAt = (rows: readonly NoiseRow[], hz: number): { level: number; t60: number } => {
  const above = rows.findIndex(([centre]) => centre >= hz);
  const high = rows[above < 0 ? rows.length - 1 : above];
  const low = rows[Math.max(0, (above < 0 ? rows.length : above) - 1)];
  if (!high || !low) throw new RangeError('a cluster needs a noise table');
  const width = Math.log2(high[0] / low[0]);
  const share = width > 0 ? Math.min(1, Math.log2(hz / low[0]) / width) : 0;
  return {
    level: low[2] + (high[2] - low[2]) * share,
    t60: low[3] * (high[3] / low[3]) ** share,
  };
};

/**
 * Inharmonic partials of a plate: spread evenly over the octaves with chance in each step, levels scattered as those of
 * many modes struck at one point are. The same cluster always gives the same rows; the stroke varies them.
 */
export const cymbalPartials = (
  { seed, from, to, count, share }: Cluster,
  rows: readonly NoiseRow[],
): readonly ModeRow[] => {
  const random = createRandom(seed);
  const perOctave = count / Math.log2(to / from);
  return Array.from({ length: count }, (_, i): ModeRow => {
    const hz = from * (to / from) ** ((i + random()) / count);
    const { level, t60 } = ringAt(rows, hz);
    // energy of an octave split over its partials (a sine of amplitude A has RMS A/√2), each with chance
    const scatter = 10 * Math.log10(-Math.log(1 - random()));
    const energy = level + 10 * Math.log10((2 * share) / perOctave) + Math.max(scatter, -15);
    return [hz, energy, t60, 2 * Math.PI * random()];
  });
};
