/** The measure of drum hits itself, held against sounds whose figures are known by construction. */
import { describe, expect, it } from 'vitest';
import { hitLoudness } from '../../src/audio/drums/drum-level';
import { createRandom } from '../../src/core/theory/random';
import { loudnessOf } from '../helpers/drum-loudness';
import { measureHit } from '../helpers/drum-measure';

const RATE = 48000;
const sound = (seconds: number, value: (t: number) => number): Float32Array =>
  Float32Array.from({ length: seconds * RATE }, (_, i) => value(i / RATE));
const decaying = (hz: number, t60: number, t: number): number =>
  10 ** ((-3 * t) / t60) * Math.sin(2 * Math.PI * hz * t);

describe('loudness', () => {
  // ITU-R BS.1770-5, annex 1: a 997 Hz sine at full scale in one channel reads −3.01 LKFS
  it('reads −3.01 for a 997 Hz sine at full scale', () => {
    const sine = sound(1, (t) => Math.sin(2 * Math.PI * 997 * t));
    expect(loudnessOf(sine, RATE)).toBeCloseTo(-3.01, 2);
    expect(hitLoudness(Float64Array.from(sine), RATE)).toBeCloseTo(-3.01, 2);
  });

  it.each([8000, 22050, 44100, 96000])('reads the same at a rate of %i Hz', (rate) => {
    const sine = Float64Array.from({ length: rate }, (_, i) => Math.sin((2 * Math.PI * 997 * i) / rate));
    expect(hitLoudness(sine, rate)).toBeCloseTo(-3.01, 1);
  });
});

describe('measureHit', () => {
  it.each([0.1, 0.3, 1.2])('reads the T60 of a single mode of %f s', (t60) => {
    const figures = measureHit(
      sound(t60 * 1.5 + 0.1, (t) => decaying(440, t60, t)),
      RATE,
    );
    for (const value of [figures.t60, figures.t60Early, figures.t60Late, figures.modes[0]?.t60]) {
      expect((value ?? 0) / 1000 / t60).toBeCloseTo(1, 1);
    }
    expect((figures.t20 ?? 0) / 1000).toBeCloseTo(t60 / 3, 1);
  });

  it('finds modes, their levels and the octaves they lie in', () => {
    const figures = measureHit(
      sound(0.8, (t) => decaying(210, 0.4, t) + 0.25 * decaying(780, 0.4, t)),
      RATE,
    );
    expect(figures.modes[0]?.hz).toBeCloseTo(210, 0);
    expect(figures.modes[1]?.hz).toBeCloseTo(780, 0);
    expect(figures.modes[1]?.db).toBeCloseTo(-12, 0);
    expect(figures.bands[3]).toBeGreaterThan(-0.5);
    expect(figures.bands[5]).toBeCloseTo(-12.3, 0);
    expect(figures.body[0]).toBeCloseTo(210, 0);
    expect(figures.tonalToNoise).toBeGreaterThan(6);
  });

  it('reads a step as an attack of about 4 ms and a later swell by its own length', () => {
    const step = measureHit(
      sound(0.5, (t) => decaying(2000, 0.4, t)),
      RATE,
    );
    expect(step.attack).toBeGreaterThan(3);
    expect(step.attack).toBeLessThan(4.5);
    const swell = measureHit(
      sound(0.5, (t) => Math.min(1, t / 0.05) * Math.sin(2 * Math.PI * 2000 * t)),
      RATE,
    );
    // from 10 to 90 % of a straight rise of 50 ms
    expect(swell.attack).toBeCloseTo(40, -1);
  });

  it('tells noise from tone, with equal energy per hertz in every octave', () => {
    const random = createRandom(5);
    const { bands, flatness, tonalToNoise, crest, centroid } = measureHit(
      sound(0.5, () => 2 * random() - 1),
      RATE,
    );
    for (const i of [5, 6, 7, 8]) expect((bands[i] ?? 0) - (bands[i - 1] ?? 0)).toBeCloseTo(3, -0.5);
    // the power of noise scatters exponentially: its logarithm lies 10 γ / ln 10 = 2.5 dB under its mean
    expect(flatness).toBeCloseTo(-2.5, 0);
    expect(tonalToNoise).toBeLessThan(-5);
    expect(crest).toBeCloseTo(20 * Math.log10(Math.sqrt(3)), 1);
    expect(centroid[1]).toBeGreaterThan(7000);
  });
});
