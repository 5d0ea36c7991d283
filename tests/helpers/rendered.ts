import type { Voice, VoiceNote, VoiceSound } from '../../src/audio/synthesis/voice';

/** Notes kept of a voice: the longest are three quarters of a megabyte. */
const MOST = 60;

/**
 * A voice that computes a note once for all the tests of a file that look at it. What it gives is shared: nothing may
 * be written into it. Where a test is about computing a note twice, it asks the voice itself.
 */
export const rendered = (voice: Voice): Voice => {
  const known = new Map<string, VoiceSound>();
  return (note: VoiceNote) => {
    const name = JSON.stringify([note.midi, note.hz, note.velocity, note.sampleRate, note.seed]);
    const sound = known.get(name) ?? voice(note);
    known.delete(name);
    known.set(name, sound);
    const [oldest] = known.keys();
    if (known.size > MOST && oldest !== undefined) known.delete(oldest);
    return sound;
  };
};
