import type { Playhead } from '../../core/arranger/playhead';
import type { HeardNote } from '../../core/hearing/heard-note';
import { asSeconds, type Seconds } from '../../core/theory/units';

/** A note in the music. */
export interface PlacedNote {
  readonly note: HeardNote;
  /** What the player heard of the band when the note began; null where it did not play. */
  readonly playhead: Playhead | null;
}

/** Finds the place of notes in the music when they begin, and remembers it until they have ended. */
export interface NotePlacer {
  place(note: HeardNote): PlacedNote;
  forget(): void;
}

interface Parts {
  /** Where in the music the sound is that left at a time of the audio clock. */
  readonly playheadAt: (time: Seconds) => Playhead | null;
  /** Seconds from a sound leaving the page until the page hears it. */
  readonly roundTrip: () => number;
}

/** Says where the playhead was when a note began; a note keeps its place until it has ended. */
export const createNotePlacer = ({ playheadAt, roundTrip }: Parts): NotePlacer => {
  const places = new Map<number, Playhead | null>();
  return {
    place: (note) => {
      const known = places.get(note.id);
      const playhead = known === undefined ? playheadAt(asSeconds(note.from - roundTrip())) : known;
      if (note.to === null) places.set(note.id, playhead);
      else places.delete(note.id);
      return { note, playhead };
    },
    forget: () => places.clear(),
  };
};
