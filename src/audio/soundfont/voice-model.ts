/** What the computed voices are to the sounds of a file: how loud each of its notes is to be, and whether it is held. */
import { brushesLoudness } from '../drums/brushes';
import { sticksLoudness } from '../drums/sticks';
import type { VoiceId, VoiceNote } from '../synthesis/voice';
import { VOICES } from '../voices/voices';
import { LOUDEST_WITHIN, loudestOf, type VoiceModel } from './font-sound';

/** The model of a note: of a kit without computing anything, of a tone computed only as far as its loudness is taken. */
export const voiceModel = (voice: VoiceId, note: VoiceNote): VoiceModel => {
  if (voice === 'sticks') return { loudness: sticksLoudness(note), holds: false };
  if (voice === 'brushes') return { loudness: brushesLoudness(note), holds: false };
  const { samples, loop } = VOICES[voice]({ ...note, held: LOUDEST_WITHIN });
  return { loudness: loudestOf(samples, note.sampleRate), holds: loop !== null };
};
