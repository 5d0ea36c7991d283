/**
 * Pitches of equal temperament by the formula 440 · 2^((m − 69) / 12) (A4 by ISO 16:1975), and the opinion of an
 * independent detector on the same sound: pitchy 4.1.0, after P. McLeod and G. Wyvill, "A smarter way to find pitch"
 * (ICMC 2005).
 */
import { PitchDetector } from 'pitchy';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { RICHTER } from '../../../src/core/harp/tunings';
import { createPitchTracker } from '../../../src/core/hearing/pitch-tracker';
import { reachableRanges } from '../../../src/core/hearing/reachable';
import { asPitchClass } from '../../../src/core/theory/units';

const SAMPLE_RATE = 48000;
const WINDOW = 4096;

/** A tone with harmonics that fall by 6 dB an octave, a quarter of a second. */
const toneOf = (hz: number): Float32Array =>
  Float32Array.from({ length: SAMPLE_RATE / 4 }, (_, n) => {
    let sum = 0;
    for (let k = 1; k <= 10 && k * hz < 20000; k += 1) {
      sum += (0.1 / k) * Math.sin((2 * Math.PI * k * hz * n) / SAMPLE_RATE + k * k);
    }
    return sum;
  });

const cents = (heard: number, other: number): number => Math.abs(1200 * Math.log2(heard / other));

describe('every reed of a harp', () => {
  const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
  const keys = [...new Set(harp.reeds.map(({ pitch }) => Number(pitch)))].sort((a, b) => a - b);

  it('covers three octaves from C4', () => {
    expect([keys[0], keys.at(-1)]).toEqual([60, 96]);
  });

  it.each(keys)('key %i is heard at its formula’s pitch, as the other detector hears it', (key) => {
    const hz = 440 * 2 ** ((key - 69) / 12);
    const samples = toneOf(hz);
    const frames = createPitchTracker({ sampleRate: SAMPLE_RATE, ranges: reachableRanges(harp) }).push(
      samples,
    );
    const heard = frames.at(-1)?.frequency ?? 0;
    const [other] = PitchDetector.forFloat32Array(WINDOW).findPitch(samples.subarray(-WINDOW), SAMPLE_RATE);
    expect(cents(heard, hz)).toBeLessThan(3);
    expect(cents(heard, other)).toBeLessThan(3);
  });
});
