import type { Sound } from '../../core/harp/harp';
import type { Seconds } from '../../core/theory/units';
import type { EarChoice, HeardReport, SoundBlock } from '../../mic/microphone';
import type { EarLive } from './ear-live';
import type { PlacedNote } from './place-notes';

/** The stream of what is heard, for whatever practises with it. Every listener gets an unsubscriber back. */
export interface Hearing {
  /** What is heard now, for an animation frame. */
  readonly live: EarLive;
  /** All that is heard: frames in batches of some 30 ms, notes at once; seconds of the audio clock. */
  onHeard(listener: (report: HeardReport) => void): () => void;
  /** Notes when they begin (`to` null) and when they have ended, with their place in the music. */
  onNote(listener: (placed: PlacedNote) => void): () => void;
  /** The same, and notes of an instrument that is plugged in beside them: whatever the player plays, however it comes. */
  onPlayed(listener: (placed: PlacedNote) => void): () => void;
  /** Takes a note of an instrument in; its numbers are below 0, those of heard notes are not. */
  takePlayed(placed: PlacedNote): void;
  /** Hands the sound itself on while the microphone listens, or no longer. */
  record(on: boolean): void;
  onSound(listener: (block: SoundBlock) => void): () => void;
  /** Seconds from a sound leaving the page until the page hears it. */
  roundTrip(): number;
  /** Teaches the ear how a natural sound of the harp in hand sounds, by a note of it alone that has just ended. */
  teach(sound: Sound, from: Seconds, to: Seconds): void;
  /** What is known of how the reeds of the harp in hand sound; nothing while no microphone is open. */
  reeds(): Pick<EarChoice, 'reeds'>;
  /** Sounds that are meant to be played now, as `soundId` writes them: they decide where a pitch has two places. */
  aim(targets: readonly string[]): void;
}
