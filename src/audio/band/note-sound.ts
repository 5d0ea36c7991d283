import type { BandSound } from '../../core/song/band-sound';
import type { Bank } from '../bank/bank';
import type { FoundSound } from '../bank/sound-cache';
import { gainInLayer, type SoundKey, soundKeyFor } from '../bank/sound-key';
import { voiceGain } from '../mixer/channel-strips';
import { isHeld, type ScheduledNote } from '../transport/scheduled-note';

/** Samples that know how long they are, in seconds. */
export interface Timed {
  readonly duration: number;
}

/** The bank's sound for a note, and the gain that brings it to the note's velocity. */
export interface NoteSound<Samples = AudioBuffer> {
  readonly found: FoundSound<Samples>;
  readonly level: number;
}

/** How the band sounds where this note is played. */
export const soundAt = <Sound extends Partial<BandSound>>(
  { instruments }: ScheduledNote,
  sound: Sound,
): Sound => (instruments === undefined ? sound : { ...sound, ...instruments });

/** The keys of the bank that notes need, in the order of the notes. */
export const keysOf = (notes: readonly ScheduledNote[], sound: BandSound): SoundKey[] =>
  notes.map((note) => soundKeyFor({ ...note.event, stroke: note.stroke }, soundAt(note, sound)));

/** The sound a note is played with now; null when there is nothing like it. */
export const noteSound = <Samples>(
  bank: Bank<Samples>,
  note: ScheduledNote,
  sound: BandSound,
): NoteSound<Samples> | null => {
  const { event, stroke } = note;
  const found = bank.find(soundKeyFor({ ...event, stroke }, soundAt(note, sound)));
  if (found === null) return null;
  const { voice, layer } = found.sound.key;
  return { found, level: gainInLayer(event.velocity, layer, voice) * voiceGain(voice) };
};

/** When the note gives way to its release: at its end, or where the sound itself ends. Seconds of the audio clock. */
export const heldUntil = (note: ScheduledNote, { sound, rate }: FoundSound<Timed>): number => {
  const over = note.at + sound.samples.duration / rate - note.offset;
  if (!isHeld(note.event.part)) return over;
  return sound.loop === null ? Math.min(note.until, over) : note.until;
};

/** Whether a note sounds alike in both, but for the mix. */
export const sameInstruments = (one: BandSound, other: BandSound): boolean => {
  const of = ({ bass, chords, second, kit, temperament, own, recorded }: BandSound) =>
    JSON.stringify([bass, chords, second, kit, temperament, own, recorded]);
  return of(one) === of(other);
};
