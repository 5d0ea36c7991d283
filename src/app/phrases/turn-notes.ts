import type { Playhead } from '../../core/arranger/playhead';
import { secondsPerTickAt } from '../../core/arranger/section-time';
import type { Sound } from '../../core/harp/harp';
import type { PlacedNote } from '../ear/place-notes';

/** A note heard over a chorus, by its place in the section. */
export interface HeardInSection {
  readonly ticks: number;
  readonly length: number;
  readonly pitch: number;
  readonly sound: Sound | null;
  readonly sounds: readonly Sound[];
  /** Of other holes on the same breath. */
  readonly together: readonly Sound[];
}

/** Notes that still sound count as this long, in seconds. */
const SOUNDING = 0.4;

/** Keeps the notes of one chorus. */
export interface TurnNotes {
  take(placed: PlacedNote): void;
  /** To be told of the playhead: notes of the chorus before are let go. */
  follow(position: Playhead | null): void;
  /** Notes that began within these ticks of the section. */
  between(from: number, to: number): readonly HeardInSection[];
}

/** An empty memory. */
export const createTurnNotes = (): TurnNotes => {
  let chorus: number | null = null;
  let notes = new Map<number, HeardInSection>();
  return {
    take: ({ note, playhead }) => {
      if (playhead === null || playhead.section.kind !== 'chorus' || playhead.section.chorus !== chorus)
        return;
      const seconds = note.to === null ? SOUNDING : note.to - note.from;
      const { sound } = note;
      notes.set(note.id, {
        ticks: playhead.ticks,
        length: seconds / secondsPerTickAt(playhead.section, playhead.ticks),
        pitch: note.pitch + note.cents / 100,
        sound,
        together: note.together,
        sounds: sound === null ? [] : [sound, ...note.alternatives],
      });
    },
    follow: (position) => {
      const next = position?.section.kind === 'chorus' ? position.section.chorus : null;
      if (next === chorus) return;
      chorus = next;
      notes = new Map();
    },
    between: (from, to) =>
      [...notes.values()]
        .filter(({ ticks }) => ticks >= from && ticks < to)
        .sort((a, b) => a.ticks - b.ticks),
  };
};
