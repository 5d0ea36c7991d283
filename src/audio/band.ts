import type { Program, Section } from '../core/arranger/program';
import type { PartId } from '../core/score/score';
import type { BassVoice, ChordVoice, Kit } from '../core/score/voices';
import type { Mix } from '../core/settings/mix';
import type { Cents, Hz, Seconds } from '../core/theory/units';

/** What A4 is and how far each pitch class lies from equal temperament (12 entries, C first). */
export interface BandTuning {
  readonly reference: Hz;
  readonly offsets: readonly Cents[];
}

/** Where the sound that leaves the loudspeaker now is in the music. */
export interface HeardPosition {
  readonly section: Section;
  /** Index into `section.chart.bars`. */
  readonly bar: number;
  /** Whole beat within the bar, from 0. */
  readonly beat: number;
  /** Ticks from the section's start, fractional. */
  readonly ticks: number;
}

export type BandStatus =
  /** Nothing loaded yet: the first gesture will load the audio part. */
  | { readonly kind: 'asleep' }
  | { readonly kind: 'loading' }
  | { readonly kind: 'ready' }
  | { readonly kind: 'playing' }
  /** The system took the sound away (a call, a device unplugged): it goes on when the sound is back, or with `resume`. */
  | { readonly kind: 'interrupted' }
  /** The browser wants a click or key press first. */
  | { readonly kind: 'blocked' }
  | { readonly kind: 'failed'; readonly why: 'no web audio' | 'load' | 'device'; readonly detail: string };

/** Parts that play from an opened file of the player's own. */
export interface OwnSound {
  /** Told apart from other files of this visit by this number. */
  readonly source: number;
  readonly parts: readonly PartId[];
}

/** Everything the desk and the instruments need besides the music. */
export interface BandSound {
  readonly mix: Mix;
  readonly tuning: BandTuning;
  readonly bass: BassVoice;
  readonly chords: ChordVoice;
  readonly kit: Kit;
  /** Sounds from a file of the player's own; built-in voices everywhere when absent. */
  readonly own?: OwnSound;
}

export interface Band {
  status(): BandStatus;
  /** Must be called inside a user gesture the first time. Counts in, then enters the first chorus at `fromBar`. */
  play(program: Program, sound: BandSound, fromBar: number): Promise<BandStatus>;
  /** Asks for the sound back after an interruption and goes on where the band was; does nothing otherwise. */
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
   * glides to its pitch.
   */
  audition(part: PartId, midi: number, seconds: Seconds, glideFrom: number): Promise<void>;
  heard(): HeardPosition | null;
  /** The section after the one being heard, for looking ahead; null when none or stopped. */
  upcoming(): Section | null;
  /** Called when the heard bar changes (and with null on stop). Returns the unsubscriber. */
  onBar(listener: (position: HeardPosition | null) => void): () => void;
  onStatus(listener: (status: BandStatus) => void): () => void;
  /** Called when the page has to compute the band's sounds itself, which may make it stick. Returns the unsubscriber. */
  onMakeshift(listener: () => void): () => void;
  dispose(): void;
}
