import { seedFrom } from '../../core/theory/random';
import type { Voice, VoiceId, VoiceSound } from '../synthesis/voice';
import { LAYERS, nameOfKey, type SoundKey } from './sound-key';

/**
 * Computes the sound of a key with one of the given voices. The seed follows from the key alone, so that the same
 * key always sounds the same and different strokes differ.
 */
export const computeSound = (
  voices: Readonly<Record<VoiceId, Voice>>,
  key: SoundKey,
  sampleRate: number,
): VoiceSound =>
  voices[key.voice]({
    midi: key.midi,
    hz: key.hz,
    velocity: LAYERS[key.layer] ?? 0,
    sampleRate,
    seed: seedFrom(key.stroke, nameOfKey(key)),
  });
