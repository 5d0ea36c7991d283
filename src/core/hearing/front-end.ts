import { highPass, lowPass } from './biquad';

/** Turns raw samples into what the ear works on: without rumble and hiss, at about 24 kHz, in whole hops. */
export interface FrontEnd {
  /** Rate after decimation, Hz. */
  readonly rate: number;
  /** Raw samples in a hop. */
  readonly rawHop: number;
  /** Calls `take` with every hop that becomes full; the array is overwritten by the next. */
  push(samples: Float32Array, take: (hop: Float64Array) => void): void;
}

export interface FrontEndOptions {
  readonly sampleRate: number;
  /** Samples in a hop, after decimation. */
  readonly hop: number;
  /** High-pass corner in Hz. */
  readonly lowest: number;
}

/** Reeds say little above this, cheap speakers much; it also guards the decimation. */
const HIGHEST = 7000;
/** Fine enough for the shortest lag, coarse enough to be cheap. */
const WORKING_RATE = 24000;
/** A sample beyond this is a fault of the device, not sound. */
const LOUDEST = 64;

const sane = (sample: number): number => (Math.abs(sample) <= LOUDEST ? sample : 0);

/** Samples that are not numbers, or out of all range, count as silence. */
export const createFrontEnd = ({ sampleRate, hop, lowest }: FrontEndOptions): FrontEnd => {
  const factor = Math.max(1, Math.round(sampleRate / WORKING_RATE));
  const withoutRumble = highPass(lowest, sampleRate);
  const withoutHiss = lowPass(Math.min(HIGHEST, 0.4 * sampleRate), sampleRate);
  const current = new Float64Array(hop);
  let filled = 0;
  let phase = 0;
  return {
    rate: sampleRate / factor,
    rawHop: hop * factor,
    push(samples, take) {
      for (const sample of samples) {
        const filtered = withoutHiss(withoutRumble(sane(sample)));
        phase += 1;
        if (phase < factor) continue;
        phase = 0;
        current[filled] = filtered;
        filled += 1;
        if (filled < hop) continue;
        filled = 0;
        take(current);
      }
    },
  };
};
