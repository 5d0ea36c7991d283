import type { BandSound } from '../../core/song/band-sound';
import { envelopeOf, glideOf, onSample } from '../band/note-envelope';
import { noteSound, soundAt } from '../band/note-sound';
import type { Bank } from '../bank/bank';
import { voiceOf } from '../bank/sound-key';
import type { ScheduledNote } from '../transport/scheduled-note';
import type { MixNote } from './note-samples';

/** A sound that was handed to whoever mixes. */
export interface HandedSound {
  readonly id: number;
  /** In seconds. */
  readonly duration: number;
}

/** Notes as they are mixed, in the order they begin; those that nothing in the bank can play are left out. */
export const mixNotes = (
  notes: readonly ScheduledNote[],
  bank: Bank<HandedSound>,
  { sound, sampleRate }: { readonly sound: BandSound; readonly sampleRate: number },
): readonly MixNote[] =>
  [...notes]
    .sort((one, other) => one.at - other.at)
    .flatMap((note) => {
      const match = noteSound(bank, note, sound);
      if (match === null) return [];
      const { part, pitch } = note.event;
      return {
        part,
        pitch,
        voice: voiceOf(part, soundAt(note, sound)),
        sound: match.found.sound.samples.id,
        rate: match.found.rate,
        glide: glideOf(note),
        envelope: envelopeOf(note, match, onSample(note.at, sampleRate)),
      };
    });
