/** What a player makes of a computed sound. */
import type { VoiceSound } from '../../src/audio/synthesis/voice';

/** The sound held for `seconds` (loops go round), then faded in a straight line over its release, then 50 ms of silence. */
export const heldFor = (sound: VoiceSound, seconds: number, sampleRate: number): Float32Array => {
  const held = Math.round(seconds * sampleRate);
  const fade = Math.max(1, Math.round(sound.release * sampleRate));
  const { samples, loop } = sound;
  return Float32Array.from({ length: held + fade + Math.round(0.05 * sampleRate) }, (_, i) => {
    const at = loop !== null && i >= loop.to ? loop.from + ((i - loop.from) % (loop.to - loop.from)) : i;
    const level = i < held ? 1 : Math.max(0, 1 - (i - held) / fade);
    return level * (samples[at] ?? 0);
  });
};
