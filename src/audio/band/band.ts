import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import type { OutsideEvent } from '../../core/midi/outside-event';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import type { Seconds } from '../../core/theory/units';

/** What the band is doing, and what keeps it from playing. */
export type BandStatus =
  /** Nothing loaded yet: the first gesture will load the audio part. */
  | { readonly kind: 'asleep' }
  | { readonly kind: 'loading' }
  | { readonly kind: 'ready' }
  | { readonly kind: 'playing' }
  /** Silent in the middle of a song: it goes on with `resume`. */
  | { readonly kind: 'paused' }
  /** The system took the sound away (a call, a device unplugged): it goes on when the sound is back, or with `resume`. */
  | { readonly kind: 'interrupted' }
  /** The browser wants a click or key press first. */
  | { readonly kind: 'blocked' }
  | { readonly kind: 'failed'; readonly why: 'no web audio' | 'load' | 'device'; readonly detail: string };

/** The band's audio context, lent to whoever hears or adds to what is sent out. */
export interface LentOutput {
  readonly context: AudioContext;
  /** Everything the page sends out passes here; what is connected to it is sent out too. */
  readonly output: AudioNode;
  /** To be called once it is not used any more, so that the context can rest; idempotent. */
  giveBack(): void;
}

/** A band that plays programs through the loudspeaker: what the page knows of it, the real one or a fake. */
export interface Band {
  status(): BandStatus;
  /** Must be called inside a user gesture the first time. Counts in, then enters the first chorus at `fromBar`. */
  play(program: Program, sound: BandSound, fromBar: number): Promise<BandStatus>;
  /**
   * Computes ahead what `play` would need first, away from the page; no gesture is needed. Does nothing while the band
   * plays, and says nothing when it cannot: `play` then computes it. Resolves when that is done, or is not to be.
   */
  prepare(program: Program, sound: BandSound, fromBar: number): Promise<void>;
  /** Silence within 30 ms, the place kept; does nothing unless the band is heard. */
  pause(): void;
  /**
   * Goes on where the band was: after a pause at the beginning of the bar it was in, without a count-in; after an
   * interruption it asks for the sound back. Does nothing otherwise.
   */
  resume(): Promise<BandStatus>;
  /** Silence within 30 ms; idempotent. */
  stop(): void;
  /** Takes a changed program over while playing: same place in the form, heard within a beat, no gap, no click. */
  change(program: Program): void;
  /** Moves to a bar of the current chorus at the next beat. */
  seek(bar: number): void;
  setSound(sound: BandSound): void;
  /**
   * Plays one note of a part's voice now, for listening to a single sound; it starts `glideFrom` semitones away and
   * glides to its pitch. With 0 seconds it ends such a note that is heard, as a key is let go.
   */
  audition(part: PartId, midi: number, seconds: Seconds, glideFrom: number): Promise<void>;
  /** Where in the music the sound is that leaves the loudspeaker now; null while nothing plays. */
  playhead(): Playhead | null;
  /**
   * Where in the music the sound is that left through the lent output at a time of its context, in seconds; null where
   * nothing did, or it is too long ago (5 s).
   */
  playheadAt(time: Seconds): Playhead | null;
  /**
   * Lends the context, asked to run within the gesture; the band need not be loaded. Null when there is none to be had,
   * with the reason in the status. It may still be suspended where the browser wants a gesture.
   */
  lend(): Promise<LentOutput | null>;
  /** The section after the playhead's, for looking ahead; null when none or stopped. */
  upcoming(): Section | null;
  /** Called when the playhead enters another bar (and with null on stop). Returns the unsubscriber. */
  onBar(listener: (position: Playhead | null) => void): () => void;
  onStatus(listener: (status: BandStatus) => void): () => void;
  /** Called when the page has to compute the band's sounds itself, which may make it stick. Returns the unsubscriber. */
  onMakeshift(listener: () => void): () => void;
  /**
   * Called some ten times a second while the band plays with what leaves the loudspeaker in the next moment, for whoever
   * plays along outside of the page; what was told is not taken back. Returns the unsubscriber.
   */
  onOutside(listener: (events: readonly OutsideEvent[]) => void): () => void;
  dispose(): void;
}
