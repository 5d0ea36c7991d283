import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { brushes } from '../../../src/audio/drums/brushes';
import { hitLoudness } from '../../../src/audio/drums/drum-level';
import { sticks } from '../../../src/audio/drums/sticks';
import type { Voice, VoiceNote } from '../../../src/audio/synthesis/voice';
import { click } from '../../../src/audio/voices/click';
import { asHz, asMidi } from '../../../src/core/theory/units';
import { loudnessOf } from '../../helpers/drum-loudness';
import { transform } from '../../helpers/drum-spectrum';
import { rendered } from '../../helpers/rendered';
import { inSoak } from '../../helpers/soak';

const RATE = 48000;
const note = (midi: number, changes: Partial<Omit<VoiceNote, 'midi'>> = {}): VoiceNote => ({
  midi: asMidi(midi),
  hz: asHz(100),
  velocity: 80,
  sampleRate: RATE,
  seed: 1,
  ...changes,
});
const hit = (voice: Voice, midi: number, changes: Partial<Omit<VoiceNote, 'midi'>> = {}): Float32Array =>
  voice(note(midi, changes)).samples;

const KEYS = [
  35, 36, 37, 38, 40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51, 53, 54, 56, 60, 61, 62, 63, 64, 70, 75, 76,
  77,
];
/** Every sound of the three voices. */
const SOUNDS: readonly (readonly [name: string, voice: Voice, key: number])[] = [
  ...KEYS.map((key) => [`sticks ${key}`, sticks, key] as const),
  ...[36, 38, 39, 40, 42, 46, 51, 53].map((key) => [`brushes ${key}`, brushes, key] as const),
  ...[76, 77].map((key) => [`click ${key}`, click, key] as const),
];

const peakOf = (samples: Float32Array): number => {
  let most = 0;
  for (const value of samples) most = Math.max(most, Math.abs(value));
  return most;
};
const same = (a: Float32Array, b: Float32Array): boolean =>
  Buffer.compare(Buffer.from(a.buffer), Buffer.from(b.buffer)) === 0;
/** Loudness of the start, where every hit is loudest. */
const levelOf = (samples: Float32Array): number => loudnessOf(samples.subarray(0, RATE / 2), RATE);

/** Power per bin of the first `size` samples, without a window. */
const powerOf = (samples: Float32Array, size: number): Float64Array => {
  const re = new Float64Array(size);
  re.set(samples.subarray(0, size));
  const im = new Float64Array(size);
  transform(re, im);
  return re.subarray(0, size / 2).map((value, i) => value * value + (im[i] ?? 0) ** 2);
};
/** Mean frequency by power in the first 170 ms. */
const brightness = (samples: Float32Array): number => {
  const power = powerOf(samples, 8192);
  const sum = power.reduce((total, value) => total + value, 0);
  return power.reduce((total, value, i) => total + (value * i * RATE) / 8192, 0) / sum;
};
/** Strongest frequency below 3 kHz, to 1.5 Hz. */
const pitchOf = (samples: Float32Array): number => {
  const power = powerOf(samples, 32768);
  let best = 1;
  for (let i = 1; i < 2048; i += 1) if ((power[i] ?? 0) > (power[best] ?? 0)) best = i;
  return (best * RATE) / 32768;
};

describe.each(
  inSoak(
    SOUNDS,
    SOUNDS.filter((_, i) => i % 2 === 0),
  ),
)('%s', (_name, computed, key) => {
  const voice = rendered(computed);

  it('is the same for the same note', () => {
    expect(same(hit(computed, key), hit(voice, key))).toBe(true);
  });

  it('differs from stroke to stroke, but hardly in level', () => {
    const strokes = [1, 2, 3, 4].map((seed) => hit(voice, key, { seed }));
    const levels = strokes.map((samples) => levelOf(samples));
    for (const other of strokes.slice(1)) expect(same(strokes[0] ?? other, other)).toBe(false);
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.7);
  });

  it('is louder and brighter the harder it is struck, and stays within full scale but for the very hardest', () => {
    const strokes = [20, 45, 80, 110, 127].map((velocity) => hit(voice, key, { velocity }));
    const levels = strokes.map((samples) => levelOf(samples));
    levels.slice(1).forEach((level, i) => {
      expect(level).toBeGreaterThan((levels[i] ?? 0) + 1.5);
    });
    const [soft, , , hard, hardest] = strokes;
    if (!soft || !hard || !hardest) throw new Error('strokes are missing');
    expect(brightness(hard)).toBeGreaterThan(brightness(soft));
    expect(peakOf(hardest)).toBeLessThan(1.25);
    expect(peakOf(hard)).toBeLessThan(1);
  });

  it('starts at once, ends in silence without a step, and carries no direct current', () => {
    const samples = hit(voice, key);
    const peak = peakOf(samples);
    const first = samples.findIndex((value) => Math.abs(value) > peak / 100);
    expect(first / RATE).toBeLessThan(0.01);
    expect(peakOf(samples.subarray(0, 1))).toBeLessThan(peak / 50);
    expect(Math.abs(samples.at(-1) ?? 1)).toBe(0);
    expect(peakOf(samples.subarray(-RATE / 500))).toBeLessThan(peak * 2e-4);
    expect(Math.abs(samples.reduce((sum, value) => sum + value, 0))).toBeLessThan(0.01 * peak * RATE * 0.1);
  });

  it('rings by itself: no loop, and a release as long as the sound', () => {
    const { samples, loop, release } = voice(note(key));
    expect(loop).toBeNull();
    expect(release).toBeCloseTo(samples.length / RATE, 3);
  });
});

describe('kits', () => {
  it('give every percussion key a sound that stays finite, at any sample rate', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(sticks, brushes, click),
        fc.integer({ min: 0, max: 127 }),
        fc.integer({ min: 1, max: 127 }),
        fc.constantFrom(22050, 32000, 44100, 96000),
        fc.integer(),
        (voice, midi, velocity, sampleRate, seed) => {
          const samples = hit(voice, midi, { velocity, sampleRate, seed });
          // a NaN or an infinity anywhere makes the peak one
          expect(peakOf(samples)).toBeLessThan(1.5);
          expect(peakOf(samples)).toBeGreaterThan(0);
        },
      ),
      { numRuns: 40 },
    );
  });

  it.each([
    [39, 38],
    [57, 49],
    [59, 51],
    [52, 49],
    [65, 50],
    [68, 56],
    [69, 70],
    [81, 53],
    [20, 35],
    [127, 77],
  ])('sticks play key %i with the length of key %i', (key, standIn) => {
    expect(hit(sticks, key).length).toBe(hit(sticks, standIn).length);
    const levels = [key, standIn].map((midi) => levelOf(hit(sticks, midi)));
    expect(Math.abs((levels[0] ?? 0) - (levels[1] ?? 0))).toBeLessThan(0.6);
  });

  it('sound as loud at 44.1 kHz as at 48 kHz', () => {
    for (const key of [36, 38, 42, 51, 63]) {
      const [low, high] = [44100, 48000].map((sampleRate) =>
        hitLoudness(Float64Array.from(hit(sticks, key, { sampleRate })), sampleRate),
      );
      expect(Math.abs((low ?? 0) - (high ?? 0))).toBeLessThan(0.1);
    }
  });

  it('have toms that rise from the floor up', () => {
    const pitches = [41, 43, 45, 47, 48, 50].map((key) => pitchOf(hit(sticks, key)));
    pitches.slice(1).forEach((pitch, i) => {
      expect(pitch / (pitches[i] ?? 0)).toBeGreaterThan(1.1);
    });
  });

  it('have a softer, duller kick and ride under brushes', () => {
    for (const key of [36, 51]) {
      expect(brightness(hit(brushes, key))).toBeLessThan(brightness(hit(sticks, key)));
    }
  });

  it('click higher on the accent, well below the piercing octave', () => {
    const [accent, beat] = [76, 77].map((key) => hit(click, key));
    if (!accent || !beat) throw new Error('clicks are missing');
    expect(pitchOf(accent) / pitchOf(beat)).toBeGreaterThan(1.3);
    for (const samples of [accent, beat]) {
      expect(brightness(samples)).toBeLessThan(2500);
      expect(samples.length / RATE).toBeLessThan(0.2);
    }
  });

  it.each([
    [{ velocity: 0 }, 'velocity must be 1–127, got 0'],
    [{ velocity: 128 }, 'velocity must be 1–127, got 128'],
    [{ velocity: Number.NaN }, 'velocity must be 1–127, got NaN'],
    [{ sampleRate: 4000 }, 'sampleRate must be at least 8000 Hz, got 4000'],
  ])('refuse %o', (changes, message) => {
    expect(() => sticks(note(38, changes))).toThrow(new RangeError(message));
  });
});
