import { bench, describe } from 'vitest';
import { createSoundMaker } from '../../src/audio/bank/compute-sound';
import type { SoundKey } from '../../src/audio/bank/sound-key';
import type { VoiceId } from '../../src/audio/synthesis/voice';
import { VOICES } from '../../src/audio/voices/voices';
import { hzOf } from '../../src/core/theory/temperament';
import { asMidi } from '../../src/core/theory/units';

const key = (voice: VoiceId, midi: number): SoundKey => ({
  voice,
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  layer: 1,
  stroke: 0,
});

/** What the first two seconds of a counted-in shuffle need: clicks, sticks, then the kit, bass and chords. */
const OPENING: readonly SoundKey[] = [
  key('click', 76),
  key('click', 77),
  ...[31, 36, 38, 42, 51].map((midi) => key('sticks', midi)),
  ...[31, 35, 38, 40].map((midi) => key('upright-bass', midi)),
  ...[53, 59, 64].map((midi) => key('piano', midi)),
];

const computeAll = (keys: readonly SoundKey[]) => {
  for (const each of keys) createSoundMaker(VOICES)(each, 48_000);
};

describe('computing sounds at 48 kHz', () => {
  bench('the opening of a shuffle', () => computeAll(OPENING));
  for (const voice of ['piano', 'electric-piano', 'organ', 'guitar', 'harmonica'] as const) {
    bench(`middle C of ${voice}`, () => computeAll([key(voice, 60)]));
  }
  bench('the low E of upright-bass', () => computeAll([key('upright-bass', 28)]));
  bench('an open hi-hat of sticks', () => computeAll([key('sticks', 46)]));
});
