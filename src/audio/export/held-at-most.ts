import type { BandSound } from '../../core/song/band-sound';
import { soundAt } from '../band/note-sound';
import { type SoundKey, voiceOf } from '../bank/sound-key';
import { allNotes } from '../transport/scheduled-note';
import type { Timeline } from '../transport/timeline';

/** How long music that is known to its end holds each sound at most, in seconds, whatever its stroke and layer. */
export const heldAtMost = (timeline: Timeline, sound: BandSound): ((key: SoundKey) => number) => {
  const longest = new Map<string, number>();
  const nameOf = (voice: SoundKey['voice'], midi: number): string => `${voice}/${midi}`;
  for (const placement of timeline) {
    for (const note of allNotes(placement)) {
      const name = nameOf(voiceOf(note.event.part, soundAt(note, sound)), note.event.pitch);
      longest.set(name, Math.max(longest.get(name) ?? 0, note.until - note.at));
    }
  }
  return ({ voice, midi }) => longest.get(nameOf(voice, midi)) ?? 0;
};
