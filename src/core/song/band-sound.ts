import type { PartId } from '../score/score';
import type { BassVoice, ChordVoice, Kit, SecondVoice } from '../score/voices';
import type { Mix } from '../settings/mix';
import type { Cents, Hz, Seconds } from '../theory/units';

/** What A4 is and how far each pitch class lies from equal temperament (12 entries, C first). */
export interface BandTemperament {
  readonly reference: Hz;
  readonly offsets: readonly Cents[];
}

/** Parts that play from an opened file of sounds. */
export interface FileSound {
  /** Told apart from other files of this visit by this number. */
  readonly source: number;
  readonly parts: readonly PartId[];
}

/** Everything the mixer and the instruments need besides the music. */
export interface BandSound {
  readonly mix: Mix;
  readonly temperament: BandTemperament;
  readonly bass: BassVoice;
  readonly chords: ChordVoice;
  /** What a second chord player has; an organ when absent. */
  readonly second?: SecondVoice;
  readonly kit: Kit;
  /** Sounds from a file of the player's own; built-in sounds everywhere when absent. */
  readonly own?: FileSound;
  /** The recorded instruments, for parts that no file of the player's own plays; computed voices when absent. */
  readonly recorded?: FileSound;
  /** How much later than the browser knows the loudspeaker sounds; not at all when absent. */
  readonly lag?: Seconds;
}
