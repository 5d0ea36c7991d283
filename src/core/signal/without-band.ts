import { elementAt } from '../theory/element-at';
import { createFrontEnd, type FrontEndOptions } from './front-end';
import { createLeakCanceller } from './leak-canceller';

/** Hops of what is heard, without the band where it is known. */
export interface WithoutBand {
  /** Samples a second of the hops. */
  readonly rate: number;
  /** Raw samples in a hop. */
  readonly rawHop: number;
  /** Hands each full hop on; what is missing of the band counts as silence. */
  push(samples: Float32Array, sent: Float32Array | undefined, take: (hop: Float64Array) => void): void;
  /** Mean square below which the latest hop is most likely what is left of the band, and below which it may be. */
  hidden(): { readonly surely: number; readonly perhaps: number };
  /** Seconds that the band takes to come back; null where that is not known. */
  delay(): number | null;
}

const EMPTY = new Float32Array(0);
const NOTHING = { surely: 0, perhaps: 0 } as const;

/** A front end of the microphone alone. */
const createPlain = (options: FrontEndOptions): WithoutBand => {
  const front = createFrontEnd(options);
  return {
    rate: front.rate,
    rawHop: front.rawHop,
    push: (samples, _, take) => front.push(samples, take),
    hidden: () => NOTHING,
    delay: () => null,
  };
};

/** Front ends of microphone and band, and a canceller between them. */
const createCancelling = (options: FrontEndOptions): WithoutBand => {
  const front = createFrontEnd(options);
  const sentFront = createFrontEnd(options);
  const canceller = createLeakCanceller(options.hop);
  const rest = new Float64Array(options.hop);
  let padded = new Float32Array(0);
  const sentHops: Float64Array[] = [];
  return {
    rate: front.rate,
    rawHop: front.rawHop,
    push(samples, sent = EMPTY, take) {
      if (padded.length !== samples.length) padded = new Float32Array(samples.length);
      padded.fill(0);
      padded.set(sent.subarray(0, samples.length));
      sentHops.length = 0;
      sentFront.push(padded, (hop) => sentHops.push(hop.slice()));
      let next = 0;
      front.push(samples, (heard) => {
        canceller.step(elementAt(sentHops, next), heard, rest);
        next += 1;
        take(rest);
      });
    },
    hidden: () => ({ surely: canceller.unlearned(), perhaps: canceller.residue() }),
    delay: () => {
      const samples = canceller.delay();
      return samples === null ? null : samples / front.rate;
    },
  };
};

/** Takes the band's own sound out of what is heard, where it will be given (`band`). */
export const createWithoutBand = (band: boolean, options: FrontEndOptions): WithoutBand =>
  band ? createCancelling(options) : createPlain(options);
