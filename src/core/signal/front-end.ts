import { createFilter } from './biquad';

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
  /** Corner of the high-pass, Hz. */
  readonly lowest: number;
}

/** Reeds say little above this, cheap speakers much; it also guards the decimation. Hz. */
const HIGHEST = 7000;
/** Fine enough for the shortest lag, coarse enough to be cheap. Hz. */
const WORKING_RATE = 24000;
/** A sample beyond this is a fault of the device, not sound. */
const LOUDEST = 64;

/** How many raw samples become one. */
export const decimation = (sampleRate: number): number => Math.max(1, Math.round(sampleRate / WORKING_RATE));

/** Samples that are not numbers, or out of all range, count as silence. */
export const createFrontEnd = ({ sampleRate, hop, lowest }: FrontEndOptions): FrontEnd => {
  const factor = decimation(sampleRate);
  const filter = createFilter(
    [
      { kind: 'high-pass', cutoff: lowest },
      { kind: 'low-pass', cutoff: Math.min(HIGHEST, 0.4 * sampleRate) },
    ],
    sampleRate,
  );
  const raw = new Float64Array(hop * factor);
  const current = new Float64Array(hop);
  let filled = 0;
  return {
    rate: sampleRate / factor,
    rawHop: raw.length,
    push(samples, take) {
      for (let at = 0; at < samples.length; ) {
        const count = Math.min(samples.length - at, raw.length - filled);
        for (let i = 0; i < count; i += 1) {
          const sample = samples[at + i] ?? 0;
          raw[filled + i] = Math.abs(sample) <= LOUDEST ? sample : 0;
        }
        at += count;
        filled += count;
        if (filled < raw.length) return;
        filled = 0;
        filter(raw);
        for (let k = 0; k < hop; k += 1) current[k] = raw[(k + 1) * factor - 1] ?? 0;
        take(current);
      }
    },
  };
};
