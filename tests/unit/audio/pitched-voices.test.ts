import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Voice, VoiceId, VoiceNote } from '../../../src/audio/synthesis/voice';
import { VOICES } from '../../../src/audio/voices/voices';
import { asHz, asMidi } from '../../../src/core/theory/units';
import { heldFor } from '../../helpers/held-note';
import { centroidOf, momentaryLoudness } from '../../helpers/instrument-measure';
import { rendered } from '../../helpers/rendered';
import { inSoak } from '../../helpers/soak';

const RATE = 48000;
/** Keys of each pitched voice from its lowest to its highest in the band. */
const RANGES = [
  ['upright-bass', [28, 36, 43, 55]],
  ['fingered-bass', [28, 36, 43, 55]],
  ['piano', [48, 57, 65, 74]],
  ['electric-piano', [48, 57, 65, 74]],
  ['organ', [48, 57, 65, 74]],
  ['guitar', [48, 57, 65, 74]],
  ['harmonica', [55, 67, 79, 91]],
] as const satisfies readonly (readonly [VoiceId, readonly number[]])[];
const HELD: ReadonlySet<VoiceId> = new Set(['organ', 'harmonica']);
/** What no sample of a voice exceeds, at any velocity: the mixer's headroom starts here. */
const STATED_PEAK = 0.9;

const hzOfKey = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const note = (midi: number, changes: Partial<VoiceNote> = {}): VoiceNote => ({
  midi: asMidi(midi),
  hz: asHz(hzOfKey(midi)),
  velocity: 80,
  sampleRate: RATE,
  seed: 1,
  ...changes,
});

const peakOf = (samples: Float32Array): number =>
  samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const meanOf = (samples: Float32Array): number =>
  samples.reduce((sum, value) => sum + value, 0) / samples.length;
/** Largest step between neighbouring samples in a stretch. */
const largestStep = (samples: Float32Array, from: number, to: number): number => {
  let most = 0;
  for (let i = Math.max(1, from); i < Math.min(to, samples.length); i += 1) {
    most = Math.max(most, Math.abs((samples[i] ?? 0) - (samples[i - 1] ?? 0)));
  }
  return most;
};

/** Phase in turns of a frequency in `size` samples around `centre`, through a raised-cosine window. */
const phaseAt = (samples: Float32Array, hz: number, centre: number, rate: number): number => {
  const half = Math.ceil((4 * rate) / hz);
  let [re, im] = [0, 0];
  for (let i = -half; i <= half; i += 1) {
    const window = 0.5 + 0.5 * Math.cos((Math.PI * i) / half);
    const turn = (-2 * Math.PI * hz * (centre + i)) / rate;
    re += window * (samples[centre + i] ?? 0) * Math.cos(turn);
    im += window * (samples[centre + i] ?? 0) * Math.sin(turn);
  }
  return Math.atan2(im, re) / (2 * Math.PI);
};

/** How far the partial near `hz` lies from it, cents: from its phase at two times. */
const centsOff = (
  samples: Float32Array,
  hz: number,
  times: readonly [number, number],
  rate = RATE,
): number => {
  const [from, to] = times;
  const drift = phaseAt(samples, hz, to, rate) - phaseAt(samples, hz, from, rate);
  const turns = drift - Math.round(drift);
  return 1200 * Math.log2(1 + (turns * rate) / (to - from) / hz);
};

const centsOfNote = (voice: Voice, of: VoiceNote): number => {
  const sound = voice(of);
  const held = heldFor(sound, 4, of.sampleRate);
  // A loop holds whole turns of everything, so a whole loop shows the mean pitch without beats or vibrato.
  const times = sound.loop
    ? ([sound.loop.from, sound.loop.to] as const)
    : ([Math.round(0.2 * of.sampleRate), Math.round(0.7 * of.sampleRate)] as const);
  return centsOff(held, of.hz, times, of.sampleRate);
};

// The others are tried against measured figures, whatever is changed in them.
describe.each(
  inSoak(
    RANGES,
    RANGES.filter((_, i) => i % 2 === 0),
  ),
)('%s', (id, keys) => {
  const voice = rendered(VOICES[id]);
  const middle = keys[1];
  const tried = inSoak(keys, [keys[0], keys[2]]);

  it.each(keys)('sounds key %i at the pitch asked for, within a cent', (midi) => {
    expect(Math.abs(centsOfNote(voice, note(midi)))).toBeLessThan(1);
  });

  it('takes its pitch from hz, not from the key, and at any rate', () => {
    for (const cents of [-40, 17]) {
      const hz = asHz(hzOfKey(middle) * 2 ** (cents / 1200));
      expect(Math.abs(centsOfNote(voice, note(middle, { hz, sampleRate: 44100 })))).toBeLessThan(1);
    }
  });

  it('gives the same samples for the same note', () => {
    const [one, other] = [VOICES[id](note(middle, { seed: 7 })), VOICES[id](note(middle, { seed: 7 }))];
    expect(other.samples.length).toBe(one.samples.length);
    expect(other.samples.every((value, i) => value === one.samples[i])).toBe(true);
    expect(other.loop).toEqual(one.loop);
  });

  it('gives another stroke for another seed, at nearly the same level', () => {
    const strokes = [1, 2, 3, 4, 5, 6].map((seed) => heldFor(voice(note(middle, { seed })), 0.5, RATE));
    const levels = strokes.map((samples) => momentaryLoudness(samples, RATE));
    expect(Math.max(...levels) - Math.min(...levels)).toBeLessThan(0.7);
    strokes.slice(1).forEach((samples, i) => {
      const apart = samples.map((value, at) => value - (strokes[i]?.[at] ?? 0));
      expect(momentaryLoudness(apart, RATE)).toBeGreaterThan(Math.min(...levels) - 40);
    });
  });

  it.each(tried)('grows louder and brighter with velocity at key %i', (midi) => {
    const figures = [20, 45, 80, 110, 127].map((velocity) => {
      const held = heldFor(voice(note(midi, { velocity })), 0.5, RATE);
      return { loudness: momentaryLoudness(held, RATE), brightness: centroidOf(held, RATE, 0.2) ?? 0 };
    });
    figures.slice(1).forEach(({ loudness, brightness }, i) => {
      expect(loudness).toBeGreaterThan((figures[i]?.loudness ?? 0) + 0.5);
      expect(brightness).toBeGreaterThan(figures[i]?.brightness ?? 0);
    });
  });

  it.each(tried)('stays clear of clipping and of direct current at key %i', (midi) => {
    for (const velocity of [1, 80, 127]) {
      const { samples } = voice(note(midi, { velocity }));
      expect(samples.every(Number.isFinite)).toBe(true);
      expect(peakOf(samples)).toBeLessThan(STATED_PEAK);
      expect(Math.abs(meanOf(samples))).toBeLessThan(peakOf(samples) / 1000);
    }
  });

  it.each(tried)('begins without a step at key %i, and ends in silence unless it loops', (midi) => {
    for (const seed of [1, 2]) {
      const { samples, loop } = voice(note(midi, { seed, velocity: 110 }));
      const within = largestStep(samples, Math.round(0.02 * RATE), Math.round(0.2 * RATE));
      expect(Math.abs(samples[0] ?? 1)).toBeLessThan(peakOf(samples) / 1000);
      expect(largestStep(samples, 0, 48)).toBeLessThanOrEqual(Math.max(2 * within, peakOf(samples) / 10));
      if (loop === null) {
        const last = samples.subarray(-0.002 * RATE);
        expect(peakOf(last)).toBeLessThan(peakOf(samples) / 3000);
        expect(samples.at(-1)).toBeCloseTo(0, 12);
      }
    }
  });

  it('lasts four seconds at most and lets go within a quarter of a second', () => {
    for (const midi of keys) {
      const { samples, loop, release } = voice(note(midi));
      expect(samples.length).toBeGreaterThan(RATE);
      expect(samples.length).toBeLessThanOrEqual(4 * RATE);
      expect(loop !== null).toBe(HELD.has(id));
      expect(release).toBeGreaterThan(0.01);
      expect(release).toBeLessThan(0.25);
    }
  });

  it('is as loud between the keys of its table as at them', () => {
    const [low, high] = [keys[0], keys[3]];
    const levels = Array.from({ length: high - low + 1 }, (_, i) =>
      momentaryLoudness(heldFor(voice(note(low + i, { sampleRate: 24000 })), 0.5, 24000), 24000),
    );
    levels.slice(1).forEach((level, i) => {
      expect(Math.abs(level - (levels[i] ?? 0))).toBeLessThan(1.8);
    });
  });

  it('plays two bars without a click', () => {
    const beat = Math.round(0.4 * RATE);
    const phrase = new Float32Array(9 * beat);
    const bodies: number[] = [];
    for (let i = 0; i < 8; i += 1) {
      const midi = (keys[0] ?? 0) + [0, 4, 7, 9, 10, 9, 7, 4][i % 8];
      const sounding = heldFor(voice(note(midi, { velocity: 70 + 5 * i, seed: i })), 0.36, RATE);
      sounding.forEach((value, at) => {
        phrase[i * beat + at] = (phrase[i * beat + at] ?? 0) + value;
      });
      bodies.push(largestStep(sounding, 0, Math.round(0.3 * RATE)));
    }
    expect(largestStep(phrase, 0, phrase.length)).toBeLessThan(1.2 * Math.max(...bodies));
    for (let i = 1; i < 8; i += 1) {
      const end = Math.round(i * beat - 0.04 * RATE);
      expect(largestStep(phrase, end - 240, end + 240)).toBeLessThan(1.2 * (bodies[i - 1] ?? 0));
    }
  });

  it('stays within its bounds an octave outside its range', () => {
    for (const midi of [keys[0] - 12, keys[3] + 6, keys[3] + 12]) {
      const { samples } = voice(note(midi, { velocity: 127 }));
      expect(peakOf(samples)).toBeGreaterThan(0.1);
      expect(peakOf(samples)).toBeLessThan(1);
    }
  });

  it('computes any note of its range in any tuning', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: keys[0], max: keys[3] }),
        fc.double({ min: -60, max: 60, noNaN: true }),
        fc.integer({ min: 1, max: 127 }),
        fc.nat(),
        (midi, cents, velocity, seed) => {
          const hz = asHz(hzOfKey(midi) * 2 ** (cents / 1200));
          const { samples } = voice(note(midi, { hz, velocity, seed, sampleRate: 16000 }));
          expect(samples.every(Number.isFinite)).toBe(true);
          expect(peakOf(samples)).toBeGreaterThan(0);
          expect(peakOf(samples)).toBeLessThan(STATED_PEAK);
        },
      ),
      { numRuns: 25 },
    );
  });

  it.each([
    [{ velocity: 0 }, 'velocity must be 1–127, got 0'],
    [{ velocity: 128 }, 'velocity must be 1–127, got 128'],
    [{ sampleRate: 4000 }, 'sampleRate must be at least 8000 Hz, got 4000'],
    [{ hz: asHz(20000) }, 'hz must lie between 0 and a third of the rate (16000), got 20000'],
  ])('refuses %o', (changes, message) => {
    expect(() => voice(note(middle, changes))).toThrow(new RangeError(message));
  });
});

describe.each(['organ', 'harmonica'] as const)('the loop of the %s', (id) => {
  const keys = RANGES.find(([name]) => name === id)?.[1] ?? [];

  it.each(keys)('closes without a seam at key %i', (midi) => {
    for (const [seed, sampleRate] of [
      [1, RATE],
      [2, 44100],
    ] as const) {
      const { samples, loop } = VOICES[id](note(midi, { seed, sampleRate, velocity: 100 }));
      expect(loop).not.toBeNull();
      if (loop === null) continue;
      const { from, to } = loop;
      const seam = Math.abs((samples[from] ?? 0) - (samples[to - 1] ?? 0));
      const beside = Math.max(largestStep(samples, to - 48, to), largestStep(samples, from + 1, from + 48));
      expect(seam).toBeLessThanOrEqual(beside);
      expect(samples.length).toBeGreaterThan(to + 32);
      for (let i = 0; i < 32; i += 1) expect(samples[to + i]).toBeCloseTo(samples[from + i] ?? 1, 5);
      expect(to - from).toBeGreaterThan(1.9 * sampleRate);
    }
  });
});

it('lets the harmonica swing into a vibrato only when a note is held', () => {
  const midi = 67;
  const held = heldFor(VOICES.harmonica(note(midi)), 3, RATE);
  const swingBetween = (from: number, to: number): number => {
    const offs: number[] = [];
    for (let at = from; at < to; at += 0.01) {
      offs.push(centsOff(held, hzOfKey(midi), [Math.round(at * RATE), Math.round((at + 0.01) * RATE)]));
    }
    return Math.max(...offs) - Math.min(...offs);
  };
  expect(swingBetween(0.2, 0.5)).toBeLessThan(1.5);
  expect(swingBetween(1.5, 2.5)).toBeGreaterThan(5);
  expect(swingBetween(1.5, 2.5)).toBeLessThan(12);
});
