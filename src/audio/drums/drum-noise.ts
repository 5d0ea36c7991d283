import type { Random } from '../../core/theory/random';

/**
 * Decaying noise in octave-wide bands: white noise with an envelope, through two equal band-pass sections.
 * The envelope goes in front of the filter, so that a low band swells and dies as slowly as it must.
 */
export interface NoiseBand {
  /** Middle of the band. */
  readonly hz: number;
  /** RMS of the stroke at its start, and the seconds it takes to fall by 60 dB. */
  readonly strike: number;
  readonly strikeT60: number;
  /** The same of what rings on after the stroke. */
  readonly ring: number;
  readonly ringT60: number;
}

/** Two sections of this quality have their −3 dB points about an octave apart. */
const QUALITY = 1;
/** Noise below −100 dB of its start is not computed. */
const SILENT_DECIBELS = 100;
/** Band middles above this share of the sample rate cannot be made. */
const HIGHEST = 0.45;

/** So many samples of white noise, evenly spread over −1 … 1. */
export const whiteNoise = (random: Random, length: number): Float32Array => {
  const noise = new Float32Array(length);
  for (let i = 0; i < length; i += 1) noise[i] = 2 * random() - 1;
  return noise;
};

/** RMS of white noise in −1 … 1 after both sections: its density times their noise bandwidth, π hz / 4 quality. */
const filteredRms = (hz: number, sampleRate: number): number =>
  Math.sqrt((1 / 3) * (2 / sampleRate) * ((Math.PI * hz) / (4 * QUALITY)));

const perSample = (t60: number, sampleRate: number): number => 10 ** (-3 / (t60 * sampleRate));

/**
 * Adds a band to `out`, reading `noise` from `offset` on and round its end: bands with offsets far apart are independent.
 */
export const addNoiseBand = (
  out: Float64Array,
  sampleRate: number,
  band: NoiseBand,
  { noise, offset }: { readonly noise: Float32Array; readonly offset: number },
): void => {
  if (band.hz > HIGHEST * sampleRate || (band.strike <= 0 && band.ring <= 0)) return;
  const longest = Math.max(band.strike > 0 ? band.strikeT60 : 0, band.ring > 0 ? band.ringT60 : 0);
  const end = Math.min(out.length, Math.ceil((longest * sampleRate * SILENT_DECIBELS) / 60));
  const angle = (2 * Math.PI * band.hz) / sampleRate;
  const alpha = Math.sin(angle) / (2 * QUALITY);
  const gain = alpha / (1 + alpha);
  const feedback = (2 * Math.cos(angle)) / (1 + alpha);
  const damping = -(1 - alpha) / (1 + alpha);
  const scale = 1 / filteredRms(band.hz, sampleRate);
  const strikeFall = perSample(band.strikeT60, sampleRate);
  const ringFall = perSample(band.ringT60, sampleRate);
  let strike = band.strike * scale;
  let ring = band.ring * scale;
  let [x1, x2, y1, y2, z1, z2] = [0, 0, 0, 0, 0, 0];
  for (let i = 0, at = offset % noise.length; i < end; i += 1) {
    const x = (noise[at] ?? 0) * (strike + ring);
    const y = gain * (x - x2) + feedback * y1 + damping * y2;
    const z = gain * (y - y2) + feedback * z1 + damping * z2;
    out[i] = (out[i] ?? 0) + z;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    z2 = z1;
    z1 = z;
    strike *= strikeFall;
    ring *= ringFall;
    at += 1;
    if (at === noise.length) at = 0;
  }
};
