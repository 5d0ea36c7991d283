import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { RICHTER } from '../../../src/core/harp/tunings';
import type { PitchFrame } from '../../../src/core/hearing/pitch-frame';
import { createPitchTracker, type PitchTrackerOptions } from '../../../src/core/hearing/pitch-tracker';
import { reachableRanges } from '../../../src/core/hearing/reachable';
import { createRandom } from '../../../src/core/theory/random';
import { asPitchClass } from '../../../src/core/theory/units';

const SECONDS = 0.6;

/** Harmonics of a tone as amplitudes, the fundamental first. */
const WAVEFORMS: Readonly<Record<string, readonly number[]>> = {
  sine: [1],
  sawtooth: [1, 1 / 2, 1 / 3, 1 / 4, 1 / 5, 1 / 6, 1 / 7, 1 / 8, 1 / 9, 1 / 10],
  square: [1, 0, 1 / 3, 0, 1 / 5, 0, 1 / 7],
  'second harmonic +6 dB': [1, 2, 0.5, 0.4, 0.3, 0.2],
  'third harmonic +10 dB': [1, 0.5, 3.16, 0.6, 0.9, 0.3],
  'fundamental −20 dB': [0.1, 1, 0.8, 0.6, 0.4, 0.3],
};

const tone = (hz: number, harmonics: readonly number[], sampleRate: number, peak = 0.3): Float32Array => {
  const sum = harmonics.reduce((total, amplitude) => total + amplitude, 0);
  return Float32Array.from({ length: SECONDS * sampleRate }, (_, n) =>
    harmonics.reduce(
      (total, amplitude, k) =>
        (k + 1) * hz < 0.45 * sampleRate
          ? total + ((peak * amplitude) / sum) * Math.sin((2 * Math.PI * (k + 1) * hz * n) / sampleRate + k)
          : total,
      0,
    ),
  );
};

const track = (samples: Float32Array, options: PitchTrackerOptions): readonly PitchFrame[] =>
  createPitchTracker(options).push(samples);

const cents = (frame: PitchFrame, hz: number): number => 1200 * Math.log2(frame.frequency / hz);

const harpInC = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const noise = (seed: number, level: number, length: number): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length }, () => level * (2 * random() - 1));
};

const brown = (seed: number, level: number, length: number): Float32Array => {
  let sum = 0;
  return noise(seed, level, length).map((step) => {
    sum = 0.995 * sum + step;
    return sum;
  });
};
/** Noise that swells four times a second, through a resonance as of a mouth, at a third of the harp's range. */
const breath = (seed: number, length: number, sampleRate: number): Float32Array => {
  const turn = 2 * Math.cos((2 * Math.PI * 900) / sampleRate) * 0.97;
  let [y1, y2] = [0, 0];
  return noise(seed, 0.02, length).map((x, n) => {
    const y = x + turn * y1 - 0.97 ** 2 * y2;
    [y2, y1] = [y1, y];
    return y * Math.sin((4 * Math.PI * n) / sampleRate) ** 2;
  });
};

describe('a held tone', () => {
  const cases = Object.entries(WAVEFORMS).flatMap(([name, harmonics]) =>
    [44100, 48000].flatMap((sampleRate) =>
      [196, 261.63, 440, 987.77, 2093].map((hz) => ({ name, harmonics, sampleRate, hz })),
    ),
  );

  it.each(cases)(
    '$name at $hz Hz, $sampleRate Hz a second, is within 3 cents, and 6 without harmonics',
    (example) => {
      const { name, harmonics, sampleRate, hz } = example;
      for (const peak of [0.003, 0.03, 0.9]) {
        const frames = track(tone(hz, harmonics, sampleRate, peak), { sampleRate });
        const settled = frames.filter(({ known }) => known > 0.1);
        for (const frame of settled) expect(Math.abs(cents(frame, hz))).toBeLessThan(name === 'sine' ? 6 : 3);
        const first = frames.find(({ frequency }) => frequency > 0);
        expect(first?.known).toBeLessThan(0.03);
      }
    },
  );
});

describe('the lowest reeds of a low harp', () => {
  it('are heard within 60 ms although the breath is nearly as loud as they are', () => {
    const sampleRate = 48000;
    const lowG = buildHarp({ tuning: RICHTER, key: asPitchClass(7), octave: -1 });
    const hz = 130.81;
    const breathing = noise(7, 0.12, SECONDS * sampleRate);
    const samples = tone(hz, WAVEFORMS.sawtooth, sampleRate).map((value, n) => value + breathing[n]);
    const frames = track(samples, { sampleRate, ranges: reachableRanges(lowG) });
    for (const frame of frames.filter(({ known }) => known > 0.06))
      expect(Math.abs(cents(frame, hz))).toBeLessThan(50);
  });
});

describe('a note after a lower one that the room still keeps', () => {
  const sampleRate = 48000;
  const [ends, begins, rise] = [0.3, 0.33, 0.02];
  /** What a room of T60 = 0.45 s has at first of the note before: Sabine's law of decay. */
  const kept = (time: number): number => (time < ends ? 1 : 0.2 * 10 ** (-3 * ((time - ends) / 0.45)));

  // The sound of both repeats after the period of the lower one as well.
  it.each([
    [523.25, 1046.5],
    [587.33, 1174.66],
    [392, 1174.66],
    [329.63, 659.26],
  ])('from %d to %d Hz is heard 15 ms after it began', (lower, higher) => {
    const harmonics = WAVEFORMS.sawtooth;
    const [one, other] = [tone(lower, harmonics, sampleRate), tone(higher, harmonics, sampleRate)];
    const samples = one.map((value, n) => {
      const time = n / sampleRate;
      return kept(time) * value + Math.max(0, Math.min(1, (time - begins) / rise)) * other[n];
    });
    const frames = track(samples, { sampleRate, ranges: reachableRanges(harpInC) });
    for (const frame of frames.filter(({ known }) => known > begins + 0.015))
      expect(Math.abs(cents(frame, higher))).toBeLessThan(50);
  });
});

describe('what is no tone', () => {
  const sampleRate = 48000;
  const silence = new Float32Array(sampleRate);
  const examples: Readonly<Record<string, Float32Array>> = {
    silence,
    'a constant': silence.map((_, n) => Math.min(0.5, n / 4800)),
    'white noise': noise(1, 0.3, 3 * sampleRate),
    'brown noise': brown(5, 0.02, 3 * sampleRate),
    breath: breath(6, 3 * sampleRate, sampleRate),
    'faint noise': noise(2, 0.001, 3 * sampleRate),
    'not numbers': silence.map((_, n) => (n % 3 === 0 ? Number.NaN : Number.POSITIVE_INFINITY)),
  };

  it.each(Object.entries(examples))('%s is unvoiced', (_, samples) => {
    const frames = track(samples, { sampleRate, ranges: reachableRanges(harpInC) });
    expect(frames.filter(({ frequency }) => frequency > 0)).toEqual([]);
    for (const { level, clarity } of frames) {
      expect(Number.isFinite(level)).toBe(true);
      expect(clarity).toBeGreaterThanOrEqual(0);
      expect(clarity).toBeLessThanOrEqual(1);
    }
  });

  it('recovers from samples that are not numbers', () => {
    const samples = tone(440, [1, 0.5], sampleRate);
    samples.fill(Number.NaN, 9600, 9700);
    const last = track(samples, { sampleRate }).at(-1);
    expect(last && Math.abs(cents(last, 440))).toBeLessThan(3);
  });
});

describe('a stream', () => {
  const sampleRate = 48000;
  const samples = tone(523.25, [1, 0.5, 0.9], sampleRate).map(
    (x, n) => x + (noise(3, 0.02, 1)[0] ?? 0) * (n % 2),
  );
  const whole = track(samples, { sampleRate });

  it('gives the same frames however it is cut', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 4000 }), { minLength: 1, maxLength: 20 }), (sizes) => {
        const tracker = createPitchTracker({ sampleRate });
        const frames: PitchFrame[] = [];
        for (let at = 0, i = 0; at < samples.length; i += 1) {
          const size = sizes[i % sizes.length] ?? 1;
          frames.push(...tracker.push(samples.subarray(at, at + size)));
          at += size;
        }
        expect(frames).toEqual(whole);
      }),
      { numRuns: 10 },
    );
  });

  it('uses nothing that comes after what it says it knows', () => {
    for (const frame of whole.filter((_, i) => i % 23 === 0)) {
      const kept = Math.round(frame.known * sampleRate);
      const changed = samples.slice();
      changed.set(noise(4, 0.9, samples.length - kept), kept);
      const again = track(changed, { sampleRate }).filter(({ known }) => known <= frame.known);
      expect(again).toEqual(whole.slice(0, again.length));
      expect(again.at(-1)).toEqual(frame);
    }
  });

  it('has times that do not fall, the centre before what is known', () => {
    for (const [i, { known, centre }] of whole.entries()) {
      expect(centre).toBeLessThanOrEqual(known);
      if (i > 0) expect(centre).toBeGreaterThanOrEqual(whole[i - 1]?.centre ?? 0);
    }
  });
});
