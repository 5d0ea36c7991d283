/** What the computed voices are to the sounds of a file: how loud each of its notes is to be, and whether it is held. */
import { brushesLoudness } from '../drums/brushes';
import { sticksLoudness } from '../drums/sticks';
import type { VoiceId, VoiceNote } from '../synthesis/voice';
import { VOICES } from '../voices/voices';
import { LOUDEST_WITHIN, loudestOf, type VoiceModel, WINDOW } from './font-sound';

/** Computed voices that are never louder than at their beginning, which is then all that is computed of them. */
const LOUDEST_FIRST: ReadonlySet<VoiceId> = new Set(['piano', 'electric-piano', 'guitar', 'upright-bass']);

/** The model of a note: of a kit without computing anything, of a tone computed only as far as its loudness is taken. */
export const voiceModel = (voice: VoiceId, note: VoiceNote): VoiceModel => {
  if (voice === 'sticks') return { loudness: sticksLoudness(note), holds: false };
  if (voice === 'brushes') return { loudness: brushesLoudness(note), holds: false };
  const { samples, loop } = VOICES[voice]({
    ...note,
    held: LOUDEST_FIRST.has(voice) ? WINDOW : LOUDEST_WITHIN,
  });
  return { loudness: loudestOf(samples, note.sampleRate), holds: loop !== null };
};
