import type { MeterName } from '../chart/chart';
import { isCompound } from './grid';

/** `feel` takes the feel's own; a number is a long : short ratio within `SWING_RANGE`. */
export type SwingChoice = 'feel' | 'by tempo' | number;

/** Smallest and largest long : short ratio; the ride was measured from 1:1 to 3.5:1 (TMH-QPSR 4/1997). */
export const SWING_RANGE = { low: 1, high: 3.5 } as const;

const clampSwing = (ratio: number): number => Math.min(SWING_RANGE.high, Math.max(SWING_RANGE.low, ratio));

/**
 * The ride cymbal's long : short ratio at a tempo in quarter notes a minute: the short note keeps about 100 ms, so
 * r = 600 / tempo − 1, kept within 1…3.5 (after doi 10.1525/mp.2002.19.3.333). Throws RangeError unless tempo > 0.
 */
export const rideSwing = (tempo: number): number => {
  if (!(tempo > 0)) throw new RangeError(`Tempo must be above 0, got ${tempo}`);
  return clampSwing(600 / tempo - 1);
};

/** What a feel says about swing. */
interface Swung {
  /** `null` keeps the chart's own meter. */
  readonly meter: MeterName | null;
  readonly swing: number | 'by tempo';
}

/**
 * Long : short of an off-beat pair as a style plays the feel at a tempo in beats a minute. Compound feels keep 2:1,
 * because the meter itself divides the beat in three.
 */
export const swingRatio = (
  feel: Swung,
  { swing }: { readonly swing: SwingChoice },
  tempo: number,
): number => {
  if (feel.meter !== null && isCompound(feel.meter)) return 2;
  const wanted = swing === 'feel' ? feel.swing : swing;
  return wanted === 'by tempo' ? rideSwing(tempo) : clampSwing(wanted);
};
