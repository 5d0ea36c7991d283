import { beforeAll, describe, expect, it } from 'vitest';
import { createPitchTracker } from '../../../src/core/hearing/pitch-tracker';
import { createLeakCanceller } from '../../../src/core/signal/leak-canceller';
import { createLeakDelay } from '../../../src/core/signal/leak-delay';
import { createSteadyDelay } from '../../../src/core/signal/steady-delay';
import { createRandom } from '../../../src/core/theory/random';
import { firstDifference } from '../../helpers/samples';

const HOP = 128;
const RATE = 24000;
const SECONDS = 6;
const DELAY = 1731;

const power = (samples: Float64Array): number => samples.reduce((sum, x) => sum + x * x, 0) / samples.length;
const decibels = (ratio: number): number => 10 * Math.log10(ratio);

/** A band of sorts: plucked notes of several pitches and a little noise. */
const makeBand = (): Float64Array => {
  const random = createRandom(5);
  const out = new Float64Array(SECONDS * RATE);
  for (let from = 0; from < out.length; from += 2400) {
    const hz = 110 * 2 ** (Math.floor(24 * random()) / 12);
    for (let n = 0; n < 9600 && from + n < out.length; n += 1) {
      const fade = Math.exp(-n / 2400);
      for (let k = 1; k < 9; k += 1) {
        out[from + n] += ((0.1 * fade) / k) * Math.sin((2 * Math.PI * k * hz * n) / RATE);
      }
      out[from + n] += 0.05 * fade * (random() - random());
    }
  }
  return out;
};

/** Late, through a short room: a direct sound and a tail of 60 ms. */
const leakOf = (band: Float64Array): Float64Array => {
  const random = createRandom(6);
  const taps = Array.from({ length: 60 }, (_, i) => ({
    at: DELAY + 24 * i,
    gain: i === 0 ? 0.5 : 0.1 * Math.exp(-i / 15) * (random() - random()),
  }));
  return band.map((_, n) => taps.reduce((sum, { at, gain }) => sum + gain * (band[n - at] ?? 0), 0));
};

/** Reed-like notes of half a second, with pauses of the same length. */
const makeHarp = (length: number): Float64Array =>
  new Float64Array(length).map((_, n) => {
    const note = Math.floor(n / (RATE / 2));
    if (note % 2 === 0) return 0;
    const hz = [523.25, 659.26, 783.99, 587.33][(note >> 1) % 4] ?? 0;
    let sum = 0;
    for (let k = 1; k < 8; k += 1) sum += (0.1 / k) * Math.sin((2 * Math.PI * k * hz * n) / RATE);
    return sum;
  });

const cancel = (sent: Float64Array, heard: Float64Array): Float64Array => {
  const canceller = createLeakCanceller(HOP);
  const out = new Float64Array(heard.length);
  for (let at = 0; at + HOP <= heard.length; at += HOP) {
    canceller.step(sent.subarray(at, at + HOP), heard.subarray(at, at + HOP), out.subarray(at, at + HOP));
  }
  return out;
};

const band = makeBand();
let leak: Float64Array = new Float64Array(0);
let harp: Float64Array = new Float64Array(0);

beforeAll(() => {
  leak = leakOf(band);
  harp = makeHarp(band.length);
});

describe('the leak of the band', () => {
  const settled = 4 * RATE;

  it('is found as late as it is, to the sample', () => {
    const delay = createLeakDelay(HOP);
    const found: number[] = [];
    for (let at = 0; at + HOP <= leak.length; at += HOP) {
      const here = delay.step(band.subarray(at, at + HOP), leak.subarray(at, at + HOP));
      if (here !== undefined) found.push(here);
    }
    expect(found.length).toBeGreaterThan(10);
    expect(new Set(found)).toEqual(new Set([DELAY]));
  });

  it('is not found where there is none', () => {
    const delay = createLeakDelay(HOP);
    for (let at = 0; at + HOP <= leak.length; at += HOP) {
      expect(delay.step(band.subarray(at, at + HOP), harp.subarray(at, at + HOP))).toBeUndefined();
    }
  });

  it('falls by more than 20 dB', () => {
    const rest = cancel(band, leak);
    expect(decibels(power(rest.subarray(settled)) / power(leak.subarray(settled)))).toBeLessThan(-20);
  });

  it('goes without the harp going with it', () => {
    const rest = cancel(
      band,
      leak.map((x, n) => x + (harp[n] ?? 0)),
    );
    const lost = rest.map((x, n) => x - (harp[n] ?? 0));
    expect(decibels(power(lost.subarray(settled)) / power(leak.subarray(settled)))).toBeLessThan(-10);
    expect(decibels(power(lost.subarray(settled)) / power(harp.subarray(settled)))).toBeLessThan(-20);
  });

  it('leaves the harp as it is while the band is silent', () => {
    const left = harp.map((x, n) => (n < harp.length - (harp.length % HOP) ? x : 0));
    expect(firstDifference(cancel(new Float64Array(harp.length), harp), left)).toBe(-1);
  });
});

describe('the way of the band', () => {
  const believed = (...looks: readonly number[]): number | null => {
    const steady = createSteadyDelay();
    for (const look of looks) steady.take(look);
    return steady.now();
  };

  it('is told once three looks agree, and a look at a reflection changes nothing', () => {
    expect([believed(500), believed(500, 501), believed(500, 1900, 70)]).toEqual([null, null, null]);
    expect(believed(500, 502, 501)).toBe(501);
    expect(believed(500, 502, 501, 640, 501, 640)).toBe(501);
  });

  it('moves where it stays moved: by ten milliseconds, as a browser’s microphone does that was held up', () => {
    expect(believed(500, 500, 500, 500, 500, 740, 740, 740)).toBe(740);
  });
});

describe('a tracker that knows the band', () => {
  const sampleRate = 24000;
  const sent = Float32Array.from(band);

  it('hears no pitch in the band alone', () => {
    const tracker = createPitchTracker({ sampleRate, band: true });
    const frames = tracker.push(Float32Array.from(leak), sent).filter(({ known }) => known > 3);
    expect(frames.length).toBeGreaterThan(500);
    const voiced = frames.filter(({ frequency }) => frequency > 0);
    expect(voiced.length / frames.length).toBeLessThanOrEqual(0.01);
    // What is told of its way: a sample is 0.04 ms.
    expect(tracker.delay()).toBeCloseTo(DELAY / RATE, 4);
  });

  it('tells no way of a band that does not come back', () => {
    const tracker = createPitchTracker({ sampleRate, band: true });
    tracker.push(Float32Array.from(harp), sent);
    expect(tracker.delay()).toBeNull();
    expect(createPitchTracker({ sampleRate }).delay()).toBeNull();
  });

  it('takes the band for no harp while it has not yet learned how it comes back', () => {
    const struck = Float32Array.from({ length: RATE / 2 }, (_, n) => {
      const turn = (2 * Math.PI * 620 * n) / RATE;
      return (
        0.3 * Math.exp(-n / 4800) * (Math.sin(turn) + 0.5 * Math.sin(2 * turn) + 0.3 * Math.sin(3 * turn))
      );
    });
    const late = struck.map((_, n) => 0.2 * (struck[n - 480] ?? 0));
    const frames = createPitchTracker({ sampleRate, band: true }).push(late, struck);
    // Without knowing the band it is a clear pitch.
    const apart = createPitchTracker({ sampleRate }).push(late);
    expect(apart.filter(({ frequency }) => frequency > 600 && frequency < 640).length).toBeGreaterThan(60);
    expect(frames.length).toBeGreaterThan(80);
    expect(frames.filter(({ frequency }) => frequency > 0)).toEqual([]);
  });

  it('gives the same frames however the two streams are cut', () => {
    const heard = Float32Array.from(leak, (x, n) => x + (harp[n] ?? 0));
    const whole = createPitchTracker({ sampleRate, band: true }).push(heard, sent);
    const tracker = createPitchTracker({ sampleRate, band: true });
    const cut = [];
    for (let at = 0; at < heard.length; at += 777) {
      cut.push(...tracker.push(heard.subarray(at, at + 777), sent.subarray(at, at + 777)));
    }
    expect(cut).toEqual(whole);
  });
});
