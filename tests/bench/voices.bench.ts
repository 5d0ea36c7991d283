import { bench, describe } from 'vitest';
import { addDampedSines, type DampedSine } from '../../src/audio/synthesis/damped-sines';
import type { VoiceId } from '../../src/audio/synthesis/voice';
import { VOICES } from '../../src/audio/voices/voices';
import { asHz, asMidi } from '../../src/core/theory/units';
import { measured } from '../helpers/bench-depth';

const compute = (id: VoiceId, midi: number, stroke: number): number =>
  VOICES[id]({
    midi: asMidi(midi),
    hz: asHz(440 * 2 ** ((midi - 69) / 12)),
    velocity: 80,
    sampleRate: 48000,
    seed: stroke,
  }).samples.length;

/** Keys a chorus of each voice touches: 15 sounds, whole ring and loop. */
const KEYS: readonly (readonly [VoiceId, low: number])[] = [
  ['upright-bass', 28],
  ['fingered-bass', 28],
  ['piano', 50],
  ['electric-piano', 50],
  ['organ', 50],
  ['guitar', 50],
  ['harmonica', 60],
];

describe('fifteen sounds of a voice', () => {
  for (const [id, low] of KEYS) {
    bench(
      id,
      () => {
        for (let i = 0; i < measured(15, 1); i += 1) compute(id, low + i, 1);
      },
      { iterations: 5, time: 500 },
    );
  }
});

describe('a bank for one song', () => {
  // Two strokes of twelve bass keys, two of fifteen chord keys, and a lead of twelve: what a blues asks for.
  bench(
    'bass, chords and lead',
    () => {
      for (const stroke of measured([0, 1], [0])) {
        for (let i = 0; i < measured(12, 1); i += 1) compute('upright-bass', 31 + i, stroke);
        for (let i = 0; i < measured(15, 1); i += 1) compute('electric-piano', 52 + i, stroke);
      }
      for (let i = 0; i < measured(12, 1); i += 1) compute('harmonica', 62 + i, 0);
    },
    { iterations: 3, time: 500 },
  );
});

describe('the loop that all strings and wheels turn in', () => {
  const sines: readonly DampedSine[] = Array.from({ length: 40 }, (_, i) => ({
    frequency: 110 * (i + 1),
    amplitude: 1,
    phase: 0,
    decay: 0,
  }));
  const out = new Float64Array(48000);
  bench('forty sines for one second', () => {
    addDampedSines(out, sines, 48000);
  });
});
