import { beforeAll, describe, expect, it } from 'vitest';
import { createRandom } from '../../../src/core/theory/random';
import { loadOtherMeter, type OtherMeter } from '../../helpers/ebur128';
import { integratedLoudness, truePeak } from '../../helpers/loudness';

const sine = (hz: number, decibels: number, seconds: number, sampleRate: number, phase = 0): Float32Array =>
  Float32Array.from(
    { length: seconds * sampleRate },
    (_, frame) => 10 ** (decibels / 20) * Math.sin((2 * Math.PI * hz * frame) / sampleRate + phase),
  );

/** Noise in bursts of changing level, so that the gates have something to do; soft towards the highest frequencies. */
const bursts = (seed: number, sampleRate: number): Float32Array => {
  const random = createRandom(seed);
  let level = 0.2;
  let last = 0;
  return Float32Array.from({ length: 8 * sampleRate }, (_, frame) => {
    if (frame % (sampleRate / 2) === 0) level = 0.4 * random() ** 3;
    const next = 2 * random() - 1;
    const value = (level * (next + last)) / 2;
    last = next;
    return value;
  });
};

describe('the tests’ own loudness meter', () => {
  // ITU-R BS.1770-4 annex 1: a 997 Hz sine at 0 dBFS in one front channel reads −3.01 LKFS.
  it('reads the calibration tone', () => {
    const silence = new Float32Array(48000 * 5);
    expect(integratedLoudness([sine(997, 0, 5, 48000), silence], 48000)).toBeCloseTo(-3.01, 1);
  });

  // EBU Tech 3341, test case 1: a stereo 1 kHz sine at −23 dBFS reads −23.0 ±0.1 LUFS.
  it.each([44100, 48000])('reads test case 1 at %i Hz', (sampleRate) => {
    const tone = sine(1000, -23, 5, sampleRate);
    expect(integratedLoudness([tone, tone], sampleRate)).toBeCloseTo(-23, 1);
  });

  // A sine of a quarter of the sample rate, sampled 45° off its peaks, hides 3.01 dB between its samples.
  it('finds the peak between samples', () => {
    expect(truePeak([sine(12000, 0, 0.1, 48000, Math.PI / 4)])).toBeCloseTo(0, 1);
  });
});

describe('a meter not ours', () => {
  let other: OtherMeter;
  beforeAll(async () => {
    other = await loadOtherMeter();
  });

  it.each([1, 2, 3])('agrees on loudness and true peak of noise %i', (seed) => {
    const [left, right] = [bursts(seed, 48000), bursts(seed + 10, 48000)];
    expect(integratedLoudness([left, right], 48000)).toBeCloseTo(other.integrated(48000, left, right), 1);
    expect(Math.abs(truePeak([left, right]) - other.truePeak(48000, left, right))).toBeLessThan(0.5);
  });
});
