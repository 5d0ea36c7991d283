import { describe, expect, it } from 'vitest';
import { soundId } from '../../../src/core/harp/tab';
import { createEar } from '../../../src/core/hearing/ear';
import { hearRecording } from '../../../src/core/hearing/hear-recording';
import type { HeardNote } from '../../../src/core/hearing/heard-note';
import { harpSamples } from '../../helpers/harp-recording';
import { C_HARP } from '../../helpers/heard-note';

const sampleRate = 48_000;
const CHOICE = { sampleRate, harp: C_HARP };

const told = (samples: Float32Array, sent?: Float32Array): readonly HeardNote[] => {
  const all: HeardNote[] = [];
  hearRecording({ samples, ...(sent === undefined ? {} : { sent }) }, CHOICE, (_, notes) =>
    all.push(...notes),
  );
  return all;
};
const names = (notes: readonly HeardNote[]): readonly (string | null)[] =>
  notes.filter(({ to }) => to !== null).map(({ sound }) => sound && soundId(sound));

/** Noise that is the same each time. */
const noise = (length: number, level: number): Float32Array => {
  let state = 1;
  return Float32Array.from({ length }, () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return level * (state / 2 ** 31 - 1);
  });
};

describe('a recording heard as a whole', () => {
  it('has the notes that are heard while it is played, where those are plain', () => {
    const samples = harpSamples(
      [
        { midi: 74, from: 0.3, to: 0.8 },
        { midi: 72, from: 0.9, to: 1.4 },
      ],
      1.8,
    );
    const ear = createEar(CHOICE);
    const live = [...ear.push(samples).notes, ...ear.end()];
    expect(names(told(samples))).toEqual(['4D', '4B']);
    expect(names(live)).toEqual(['4D', '4B']);
  });

  it('has its first note although the band comes in with it, as the way of the band is known from what follows', () => {
    const harp = harpSamples([{ midi: 74, from: 0.05, to: 0.3 }], 3);
    const band = noise(harp.length, 0.4);
    const samples = harp.map((value, i) => value + 0.8 * (band[i - 720] ?? 0));
    const notes = told(samples, band);
    expect(names(notes)).toEqual(['4D']);
    expect(Math.abs((notes[0]?.from ?? 0) - 0.05)).toBeLessThan(0.03);
  });

  it('has no short sound that is far softer than what is played, as a stick in the band is', () => {
    const samples = harpSamples(
      [
        { midi: 74, from: 0.3, to: 0.8 },
        { midi: 72, from: 0.9, to: 1.4 },
      ],
      2,
    );
    const stick = harpSamples([{ midi: 84, from: 1.6, to: 1.68 }], 2);
    const heard = samples.map((value, i) => value + 0.08 * (stick[i] ?? 0));
    expect(names(told(heard))).toEqual(['4D', '4B']);
    expect(names(told(samples.map((value, i) => value + (stick[i] ?? 0))))).toEqual(['4D', '4B', '7B']);
  });

  it('has no short note at the beginning of a band, which may be its first stroke', () => {
    const samples = harpSamples(
      [
        { midi: 74, from: 0.05, to: 0.2 },
        { midi: 72, from: 0.5, to: 1 },
      ],
      1.4,
    );
    expect(names(told(samples))).toEqual(['4D', '4B']);
    expect(names(told(samples, noise(samples.length, 0.001)))).toEqual(['4B']);
  });

  it('has a short soft note where there is no band that it may be of', () => {
    const samples = harpSamples([{ midi: 74, from: 0.3, to: 0.8 }], 1.4);
    const soft = harpSamples([{ midi: 72, from: 1, to: 1.08 }], 1.4);
    const heard = samples.map((value, i) => value + 0.17 * (soft[i] ?? 0));
    expect(names(told(heard))).toEqual(['4D', '4B']);
    expect(names(told(heard, noise(heard.length, 0.001)))).toEqual(['4D']);
  });

  it('has no chord that is far softer than single notes, as what hum and noise of a room look like', () => {
    const single = [0.3, 0.7, 1.1, 1.5].map((from) => ({ midi: 74, from, to: from + 0.3 }));
    const samples = harpSamples(single, 2.8);
    const chord = harpSamples(
      [60, 64, 67].map((midi) => ({ midi, from: 2, to: 2.6 })),
      2.8,
    );
    const together = (gain: number): number =>
      told(samples.map((value, i) => value + gain * (chord[i] ?? 0))).filter(
        (note) => note.together.length > 0,
      ).length;
    expect([together(0.5), together(0.08)]).toEqual([1, 0]);
  });

  it('may hold nothing', () => {
    expect(told(new Float32Array(0))).toEqual([]);
    expect(told(new Float32Array(sampleRate))).toEqual([]);
  });
});
