import type { Draws } from '../theory/random';

/**
 * RIFF/WAVE with integer samples ("WAVE PCM soundfile format", Stanford CCRMA), in pieces: a header that knows the
 * length beforehand, then chunks of samples in order, then `wavEnd`. Nothing needs the whole recording in memory.
 */
export interface WavFormat {
  /** Samples a second of each channel. */
  readonly sampleRate: number;
  readonly channels: number;
  readonly bits: 16 | 24;
}

const HEADER_BYTES = 44;
const LARGEST_FILE = 2 ** 32 - 1;
const PCM = 1;

const frameBytes = ({ channels, bits }: WavFormat): number => (channels * bits) / 8;

const checkFormat = ({ sampleRate, channels }: WavFormat): void => {
  if (!Number.isInteger(sampleRate) || sampleRate < 1) {
    throw new RangeError(`sampleRate must be a whole number above 0, got ${sampleRate}`);
  }
  if (!Number.isInteger(channels) || channels < 1 || channels > 65535) {
    throw new RangeError(`channels must be a whole number from 1 to 65535, got ${channels}`);
  }
};

/** The most frames (one sample of every channel) one file holds: its sizes are 32 bits wide. */
export const longestWav = (format: WavFormat): number =>
  Math.floor((LARGEST_FILE - HEADER_BYTES - 1) / frameBytes(format));

/**
 * The 44 bytes before the samples of a file of `frames` frames, with so many bytes of other chunks after them.
 * Throws RangeError when the format makes no sense or the file would be longer than `longestWav`.
 */
export const wavHeader = (format: WavFormat, frames: number, after = 0): Uint8Array => {
  checkFormat(format);
  if (!Number.isInteger(frames) || frames < 0 || frames > longestWav(format)) {
    throw new RangeError(`frames must be a whole number from 0 to ${longestWav(format)}, got ${frames}`);
  }
  const { sampleRate, channels, bits } = format;
  const block = frameBytes(format);
  const data = frames * block;
  const view = new DataView(new ArrayBuffer(HEADER_BYTES));
  const write = (at: number, name: string): void => {
    for (let i = 0; i < 4; i += 1) view.setUint8(at + i, name.charCodeAt(i));
  };
  write(0, 'RIFF');
  view.setUint32(4, HEADER_BYTES - 8 + data + (data % 2) + after, true);
  write(8, 'WAVE');
  write(12, 'fmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, PCM, true);
  view.setUint16(22, channels, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * block, true);
  view.setUint16(32, block, true);
  view.setUint16(34, bits, true);
  write(36, 'data');
  view.setUint32(40, data, true);
  return new Uint8Array(view.buffer);
};

/** What follows the samples: a zero byte where their number of bytes is odd, as RIFF chunks are even. */
export const wavEnd = (format: WavFormat, frames: number): Uint8Array =>
  new Uint8Array((frames * frameBytes(format)) % 2);

const checkChannels = (channels: readonly Float32Array[]): number => {
  const frames = channels[0]?.length ?? 0;
  const other = channels.find(({ length }) => length !== frames);
  if (other) throw new RangeError(`All channels of a chunk need ${frames} samples, got ${other.length}`);
  return frames;
};

/** Frames encoded at a time: their noise stays near at hand. */
const AT_A_TIME = 1024;

/** Where the samples of one channel go. */
interface Track {
  readonly bits: WavFormat['bits'];
  readonly bytes: Uint8Array;
  /** Of its first sample, and from each to the next, in bytes. */
  readonly at: number;
  readonly step: number;
}

/** @param noise two draws for each sample of all channels, beginning with this channel's; null for none */
const encodeTrack = (samples: Float32Array, noise: Float64Array | null, track: Track): void => {
  const { bits, bytes, step } = track;
  const scale = 2 ** (bits - 1);
  const draws = (16 * step) / bits;
  let { at } = track;
  for (let i = 0; i < samples.length; i += 1) {
    const drawn = i * draws;
    const added = noise === null ? 0 : (noise[drawn] ?? 0) - (noise[drawn + 1] ?? 0);
    const value = Math.round((samples[i] ?? 0) * scale + added);
    const clipped = value >= scale ? scale - 1 : Math.max(value, -scale);
    bytes[at] = clipped;
    bytes[at + 1] = clipped >> 8;
    if (bits === 24) bytes[at + 2] = clipped >> 16;
    at += step;
  }
};

/**
 * Samples (−1 to 1, one array a channel) as interleaved signed little-endian integers. What lies beyond is clipped.
 * With `draws`, triangular noise of one step's height is added before rounding, so that quiet endings fade into
 * noise instead of distortion; hand the same ones to every chunk of a file. 24 bits need none: a 32-bit float
 * has no finer steps near full scale. Throws RangeError when the channels differ in length.
 */
export const encodePcm = (
  channels: readonly Float32Array[],
  bits: WavFormat['bits'],
  draws: Draws | null = null,
): Uint8Array<ArrayBuffer> => {
  const frames = checkChannels(channels);
  const sampleBytes = bits / 8;
  const step = channels.length * sampleBytes;
  const bytes = new Uint8Array(frames * step);
  const drawn = new Float64Array(2 * AT_A_TIME * channels.length);
  for (let from = 0; from < frames; from += AT_A_TIME) {
    const to = Math.min(frames, from + AT_A_TIME);
    draws?.(drawn.subarray(0, 2 * (to - from) * channels.length));
    channels.forEach((samples, channel) => {
      const noise = draws && drawn.subarray(2 * channel);
      const at = from * step + channel * sampleBytes;
      encodeTrack(samples.subarray(from, to), noise, { bits, bytes, at, step });
    });
  }
  return bytes;
};
