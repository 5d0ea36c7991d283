import type { Plan } from '../arranger/program';
import type { Tuning } from '../harp/harp';
import type { OwnedHarp } from '../harp/harp-case';
import type { LineTaste } from '../harp/line-cost';
import type { LineKind, Pace } from '../harp/line-slots';
import type { TechniqueChoice } from '../harp/reach';
import type { TabStyle } from '../harp/tab';
import type { Style } from '../players/style';
import type { PartId } from '../score/score';
import type { Bpm, Hz, PitchClass } from '../theory/units';
import type { Mix } from './mix';

export type Drawing = 'comb' | 'keys';
export type Look = 'system' | 'day' | 'night';

/** The line drawn through the changes. */
export interface LineChoice {
  readonly kind: LineKind | 'none';
  /** Notes a bar of a chord-tone line. */
  readonly pace: Pace;
  readonly taste: LineTaste;
  /** 0 is the smoothest line, other numbers other good ones. */
  readonly seed: number;
  /** The harp voice plays it over the band. */
  readonly heard: boolean;
}

/** Call and answer over the form. */
export interface TradeChoice {
  readonly on: boolean;
  /** Calls typed as tab, one a line; without any they are made up. */
  readonly calls: string;
}

/** Parts that can play from a file of the player's own: all but the click. */
export type OwnSoundPart = Exclude<PartId, 'click'>;

/** Everything the player chose, kept across reloads. */
export interface Settings {
  readonly harpKey: PitchClass;
  readonly harpOctave: number;
  /** The reeds themselves, so that a retuned harp needs no list to be found in. */
  readonly tuning: Tuning;
  /** A published intonation, or cents of the player's own per reed. */
  readonly intonation: OwnedHarp['intonation'];
  /** Octave stretch of the harp in hand, in cents an octave. */
  readonly stretch: number;
  /** Half-valved holes: the lower reed bends by itself there. */
  readonly valved: readonly number[];
  /** The band's chords are tuned to agree with the harp's held chords. */
  readonly bandFollowsHarp: boolean;
  readonly position: number;
  /** The song key stays when the position changes, and the harp follows. */
  readonly songPinned: boolean;
  /** A built-in form or a chart of the player's own; where nothing has this id, the standard form is meant. */
  readonly formId: string;
  readonly tempo: Bpm;
  readonly style: Style;
  readonly plan: Plan;
  readonly technique: TechniqueChoice;
  readonly line: LineChoice;
  readonly trade: TradeChoice;
  readonly tabStyle: TabStyle;
  readonly drawing: Drawing;
  /** The map shows expected cents of natural notes in place of their names. */
  readonly showCents: boolean;
  /** Id of the scale shown as a second layer, or `none`. */
  readonly layer: string;
  readonly look: Look;
  /** What A4 is, 440–446 Hz. */
  readonly reference: Hz;
  readonly mix: Mix;
  /** Parts that play from a file of the player's own when one is loaded; the others have the built-in voices. */
  readonly ownSounds: readonly OwnSoundPart[];
}
