import { describe, expect, it } from 'vitest';
import { createPitchTracker } from '../../../src/core/hearing/pitch-tracker';

const RATE = 48_000;
const SECONDS = 0.5;
const TURN = 0.3;
/** Of the room. Seconds in which a note that has ended falls by 60 dB. */
const T60 = 0.6;

/** A reed: harmonics that fall by 6 dB an octave, or by 12 where it is dark. */
const reed = (hz: number, time: number, fall = 1): number => {
  let sum = 0;
  for (let k = 1; k * hz < 6000; k += 1) sum += Math.sin(2 * Math.PI * k * hz * time + k * k) / k ** fall;
  return sum;
};

/** One reed gives way to another of so many times its pitch, without a gap, while a room keeps the low part of it. */
const slide = (hz: number, times: number): Float32Array =>
  Float32Array.from({ length: SECONDS * RATE }, (_, i) => {
    const time = i / RATE;
    const since = time - TURN;
    if (since < 0) return 0.1 * reed(hz, time, 2);
    const kept = 0.05 * 10 ** ((-3 * since) / T60) * Math.sin(2 * Math.PI * hz * time + 1);
    return kept + 0.1 * Math.min(1, since / 0.02) * reed(times * hz, time);
  });

describe('a reed after one that lies whole octaves below it', () => {
  // In equal temperament as in just: octaves are 2 to 1, two octaves 4 to 1.
  it.each([
    [493.9, 2],
    [392, 4],
  ])('is told while a room keeps the other, of %f Hz', (hz, times) => {
    const frames = createPitchTracker({ sampleRate: RATE }).push(slide(hz, times));
    const after = frames.filter(({ known }) => known > TURN + 0.05);
    const right = after.filter(({ frequency }) => Math.abs(1200 * Math.log2(frequency / (times * hz))) < 50);
    expect(after.length).toBeGreaterThan(20);
    expect(right).toHaveLength(after.length);
  });

  it('is not heard in one reed whose harmonics are all there', () => {
    const samples = Float32Array.from({ length: SECONDS * RATE }, (_, i) => 0.1 * reed(440, i / RATE));
    const voiced = createPitchTracker({ sampleRate: RATE })
      .push(samples)
      .filter(({ known }) => known > 0.03);
    expect(voiced.filter(({ frequency }) => Math.abs(frequency - 440) > 5)).toEqual([]);
  });
});
