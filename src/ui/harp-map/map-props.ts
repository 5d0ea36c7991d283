import type { MarkedSound } from '../../core/fit/mark-sounds';
import type { NoteName } from '../../core/theory/chord';
import type { Spell } from '../../core/theory/spelling';

/** What a drawing of the harp shows. */
export interface MapView {
  readonly marks: readonly MarkedSound[];
  readonly nameOf: (mark: MarkedSound) => NoteName;
  /** Names pitches of the piano as the chord shown does. */
  readonly spell: Spell;
  /** Expected cents to show in place of the name, or null. */
  readonly centsOf: (mark: MarkedSound) => number | null;
  /** What the degrees are of. */
  readonly degreesOf: 'chord' | 'scale';
  /** Whether sounds are safe or lean, in place of degrees. */
  readonly plain: boolean;
  /** Low notes on the right. */
  readonly mirrored: boolean;
}

/** What both drawings of the harp are given. */
export interface MapProps extends MapView {
  /** Ids of the sounds lit now, as `soundId` writes them. */
  readonly lit: readonly string[];
  /** Index of the sound the tab key stops at. */
  readonly focused: number;
  /** The pitch picked, as a MIDI number: every way to get it is marked. */
  readonly picked: number | null;
  readonly onListen: (mark: MarkedSound) => void;
  /** A key of the piano was pressed. */
  readonly onPitch: (pitch: number) => void;
}
