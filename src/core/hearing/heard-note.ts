import type { Sound } from '../harp/harp';
import type { Cents, Hz, Midi, Seconds } from '../theory/units';
import type { Joined } from './note-draft';

/** How a pitch swings while it is held. */
export interface HeardVibrato {
  /** Swings a second. */
  readonly rate: number;
  /** Greatest deviation from the mean pitch. */
  readonly cents: Cents;
}

/** How a note comes to its pitch and leaves it, in cents from the settled pitch; 0 where it stands. */
export interface Movement {
  /** Where it begins: negative for a scoop from below. */
  readonly start: Cents;
  /** Time from the beginning until it has settled. */
  readonly settling: Seconds;
  /** Where it ends: negative for a note bent down at its end. */
  readonly end: Cents;
}

/** A stretch of steady pitch, as heard. */
export interface HeardPitch {
  /**
   * Counts the notes of a stream, and below 0 those that only a grip told of; the report of an end has the number of
   * its beginning.
   */
  readonly id: number;
  readonly from: Seconds;
  /** Null while it sounds. */
  readonly to: Seconds | null;
  /** Settled pitch. */
  readonly frequency: Hz;
  /** dB re full scale. */
  readonly level: number;
  /** False for what never settles, as an overbend that does not come: no note to be judged. */
  readonly steady: boolean;
  /** After an attack of its own, by a leap, or by a glide within the breath of the note before. */
  readonly joined: Joined;
  readonly vibrato: HeardVibrato | null;
  readonly movement: Movement;
}

/** A heard pitch on the harp in hand. */
export interface HeardNote extends HeardPitch {
  /** What most likely sounded; null where nothing of the harp is near. */
  readonly sound: Sound | null;
  /** Of other holes that sounded with it on the same breath, lowest first; `sound` is then the lowest of all. */
  readonly together: readonly Sound[];
  /** Sounds of the same pitch that may as well have been played, likeliest first, without `sound`. */
  readonly alternatives: readonly Sound[];
  /** The key of the sound; the nearest key without one. */
  readonly pitch: Midi;
  /** From equal temperament at the reference. */
  readonly cents: Cents;
  /** From what the sound is expected at on this harp; null without a sound, and where several sounded. */
  readonly offset: Cents | null;
}
