import { describe, expect, it } from 'vitest';
import { between, betweenAll, spanAt } from '../../../src/audio/synthesis/anchors';
import { addDampedSines, type DampedSine } from '../../../src/audio/synthesis/damped-sines';
import { addHarmonics } from '../../../src/audio/synthesis/harmonic-series';
import { addLoopNoise, loopLength, loopNoise } from '../../../src/audio/synthesis/loop';
import { kWeightedPower, loudnessOfPower } from '../../../src/audio/synthesis/loudness';
import { addNoiseBurst, bandNoise } from '../../../src/audio/synthesis/noise-burst';
import { createRandom } from '../../../src/core/theory/random';

const RATE = 48000;
const rmsOf = (values: Float64Array): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
const furthest = (a: Float64Array, b: Float64Array): number =>
  a.reduce((most, value, i) => Math.max(most, Math.abs(value - (b[i] ?? 0))), 0);

describe('addDampedSines', () => {
  const sineAt = ({ frequency, amplitude, phase, decay }: DampedSine, i: number): number =>
    amplitude * 10 ** ((-decay * i) / RATE / 20) * Math.sin((2 * Math.PI * frequency * i) / RATE + phase);

  it.each([
    [[{ frequency: 41.2, amplitude: 1, phase: 0, decay: 4 }]],
    [[{ frequency: 9000, amplitude: 0.3, phase: 2, decay: 0 }]],
    [
      [
        { frequency: 110, amplitude: 1, phase: 0.5, decay: 20 },
        { frequency: 220.5, amplitude: -0.5, phase: 1, decay: 0 },
        { frequency: 3000, amplitude: 0.2, phase: 0, decay: 200 },
      ],
    ],
  ])('equals the sines themselves over four seconds: %j', (sines) => {
    const out = new Float64Array(4 * RATE);
    addDampedSines(out, sines, RATE);
    const direct = out.map((_, i) => sines.reduce((sum, sine) => sum + sineAt(sine, i), 0));
    // What is left out is 84 dB under the strongest sine.
    expect(furthest(out, direct)).toBeLessThan(1e-4);
    expect(furthest(out.subarray(0, 4800), direct.subarray(0, 4800))).toBeLessThan(1e-9);
  });

  it('leaves out what would fold back', () => {
    const out = new Float64Array(100);
    addDampedSines(out, [{ frequency: 23000, amplitude: 1, phase: 0, decay: 0 }], RATE);
    expect(rmsOf(out)).toBe(0);
  });
});

it('adds harmonics that equal their direct sum while phase and levels move', () => {
  const out = new Float64Array(4800);
  const phaseAt = (sample: number): number => 0.01 * sample + 1e-7 * sample * sample;
  const levelOf = (k: number, sample: number): number => (1 + sample / 4800) / k;
  addHarmonics(out, {
    harmonics: 20,
    phaseAt,
    levelsAt: (sample, levels) =>
      levels.forEach((_, i) => {
        levels[i] = levelOf(i + 1, sample);
      }),
  });
  const direct = out.map((_, sample) => {
    let sum = 0;
    for (let k = 1; k <= 20; k += 1) sum += levelOf(k, sample) * Math.sin(k * phaseAt(sample));
    return sum;
  });
  // The phase runs in straight lines of 64 samples: 1e-7 · 32² rad off at most, twenty times that at the top.
  expect(furthest(out, direct)).toBeLessThan(0.02);
});

describe('loops', () => {
  it.each([65.4, 130.81, 440, 2093])('hold whole periods of %f Hz and stay in tune', (hz) => {
    const { samples, periods, fundamental } = loopLength(2, hz, RATE);
    expect(Number.isInteger(samples)).toBe(true);
    expect(fundamental).toBeCloseTo((periods * RATE) / samples, 9);
    expect(Math.abs(1200 * Math.log2(fundamental / hz))).toBeLessThan(0.01);
    expect(samples / RATE).toBeCloseTo(2, 1);
  });

  it('carry noise of unit strength that goes round', () => {
    const noise = loopNoise(createRandom(3), 9600, { low: 300, high: 3000 }, RATE);
    expect(noise.length).toBe(9600);
    expect(rmsOf(noise)).toBeGreaterThan(0.97);
    expect(rmsOf(noise)).toBeLessThan(1.03);
    const out = new Float64Array(30000);
    addLoopNoise(out, noise, 0.1, { rise: 100, from: 5000 });
    expect(out[0]).toBe(0);
    for (let i = 5000; i < 15000; i += 100) expect(out[i]).toBe(out[i + 9600]);
    const step = (values: Float64Array, i: number): number =>
      Math.abs((values[i] ?? 0) - (values.at(i - 1) ?? 0));
    const steps = Array.from(noise, (_, i) => step(noise, i));
    expect(steps[0]).toBeLessThanOrEqual(Math.max(...steps.slice(1)));
  });
});

describe('noise', () => {
  it('keeps to its band and strength', () => {
    const low = bandNoise(createRandom(1), RATE, { low: 50, high: 300 }, RATE);
    const high = bandNoise(createRandom(1), RATE, { low: 2000, high: 8000 }, RATE);
    const turns = (values: Float64Array): number =>
      values.reduce(
        (count, value, i) => count + (i > 0 && value > 0 !== (values[i - 1] ?? 0) > 0 ? 1 : 0),
        0,
      );
    expect(rmsOf(low)).toBeCloseTo(1, 9);
    expect(turns(low)).toBeLessThan(1000);
    expect(turns(high)).toBeGreaterThan(5000);
  });

  it('bursts rise from nothing and die at the rate asked for', () => {
    const out = new Float64Array(RATE);
    addNoiseBurst(
      { out, sampleRate: RATE },
      { level: 1, low: 200, high: 5000, rise: 0.002, decay: 100 },
      createRandom(1),
    );
    const level = (from: number, to: number): number =>
      20 * Math.log10(rmsOf(out.subarray(from * RATE, to * RATE)));
    expect(out[0]).toBe(0);
    expect(level(0.05, 0.15) - level(0.25, 0.35)).toBeGreaterThan(18.5);
    expect(level(0.05, 0.15) - level(0.25, 0.35)).toBeLessThan(21.5);
    expect(rmsOf(out.subarray(0.65 * RATE))).toBe(0);
  });
});

describe('tables of a few keys', () => {
  const table = [
    { midi: 40, value: 1, list: [0, 10] },
    { midi: 50, value: 3, list: [2, 10, 7] },
  ];
  it.each([
    [30, 1, [0, 10]],
    [40, 1, [0, 10]],
    [45, 2, [1, 10, 7]],
    [50, 3, [2, 10, 7]],
    [60, 3, [2, 10, 7]],
  ])('read at key %i give %f', (midi, value, list) => {
    const span = spanAt(table, midi);
    expect(between(span, (anchor) => anchor.value)).toBeCloseTo(value, 12);
    expect(betweenAll(span, (anchor) => anchor.list)).toEqual(list);
  });

  it('refuse to be empty', () => {
    expect(() => spanAt([], 60)).toThrow(new RangeError('a tone table needs at least one entry'));
  });
});

// Calibration of ITU-R BS.1770: a sine of 997 Hz at full scale in one channel reads −3.01 LUFS.
it('weighs loudness as the recommendation calibrates it', () => {
  expect(loudnessOfPower(kWeightedPower(997) / 2)).toBeCloseTo(-3.01, 1);
  expect(10 * Math.log10(kWeightedPower(10000))).toBeCloseTo(4, 0);
  expect(10 * Math.log10(kWeightedPower(38.135))).toBeCloseTo(-6, 0);
});
