/** The sound of a take, alone or over the band that was played to. */

export interface TakeSound {
  readonly sampleRate: number;
  readonly heard: Int16Array;
  /** What the band sent at the same moments; null where there was none. */
  readonly sent: Int16Array | null;
  /** Seconds by which what was played comes after what it was played to: loudspeaker, air and microphone. */
  readonly late: number;
}

const FULL = 32768;
/** The harp is brought this far above the band, dB, and raised or lowered by no more than this. By ear, no source. */
const HARP = { above: 2, most: 30 } as const;
/** Highest sample of a mix. */
const CEILING = 0.89;
/** A moment counts as sounding above this share of the loudest, in power; moments are this long, seconds. */
const SOUNDING = { share: 1e-3, moment: 0.05 } as const;

/** 16-bit samples as −1 to 1. */
export const floatsOf = (samples: Int16Array): Float32Array =>
  Float32Array.from(samples, (value) => value / FULL);

/** Samples from −1 to 1 as 16 bits; what lies beyond is clipped. */
export const shortsOf = (samples: Float32Array): Int16Array =>
  Int16Array.from(samples, (value) => Math.max(-FULL, Math.min(FULL - 1, Math.round(value * FULL))));

/** What of a take is heard. */
export type TakeSide = 'alone' | 'band';

/** The sound of a take, piece by piece. */
export interface TakeMix {
  readonly frames: number;
  /** So many samples from one on, −1 to 1. */
  piece(from: number, length: number): Float32Array;
}

/** Root of the mean square while something sounds, and the highest sample. */
const measure = (
  samples: Int16Array,
  sampleRate: number,
): { readonly level: number; readonly peak: number } => {
  const length = Math.max(1, Math.round(SOUNDING.moment * sampleRate));
  const powers: number[] = [];
  let peak = 0;
  for (let from = 0; from < samples.length; from += length) {
    let sum = 0;
    const to = Math.min(samples.length, from + length);
    for (let i = from; i < to; i += 1) {
      const value = samples[i] ?? 0;
      sum += value * value;
      if (value > peak) peak = value;
      else if (-value > peak) peak = -value;
    }
    powers.push(sum / (to - from));
  }
  const loudest = powers.reduce((most, power) => Math.max(most, power), 0);
  const sounding = powers.filter((power) => power > SOUNDING.share * loudest);
  const mean = sounding.reduce((sum, power) => sum + power, 0) / Math.max(1, sounding.length);
  return { level: Math.sqrt(mean) / FULL, peak: peak / FULL };
};

const alone = ({ heard }: TakeSound): TakeMix => ({
  frames: heard.length,
  piece: (from, length) => floatsOf(heard.subarray(from, from + length)),
});

/**
 * A take to be heard or saved: alone it is as the microphone gave it; over the band both are as the player heard them
 * together, the harp about as loud as the band.
 */
export const takeMix = (sound: TakeSound, side: TakeSide): TakeMix => {
  const { heard, sent, sampleRate, late } = sound;
  if (side === 'alone' || sent === null) return alone(sound);
  const [harp, band] = [measure(heard, sampleRate), measure(sent, sampleRate)];
  const both = harp.level > 0 && band.level > 0;
  const wished = both ? 20 * Math.log10(band.level / harp.level) + HARP.above : 0;
  const gain = 10 ** (Math.max(-HARP.most, Math.min(HARP.most, wished)) / 20);
  const scale = Math.min(1, CEILING / Math.max(CEILING, band.peak + gain * harp.peak)) / FULL;
  const shift = Math.round(late * sampleRate);
  return {
    frames: sent.length,
    piece: (from, length) =>
      Float32Array.from(
        sent.subarray(from, from + length),
        (value, i) => scale * (value + gain * (heard[from + i + shift] ?? 0)),
      ),
  };
};
