import type { BarRange, Chart } from '../chart/chart';
import type { ClickPlace } from '../players/click';
import type { Style } from '../players/style';
import type { Placing } from '../score/placing';
import type { NoteEvent, Score } from '../score/score';
import type { DropOut, Sounding } from '../score/silence';
import type { SecondVoice } from '../score/voices';
import type { Bpm, PitchClass, Ticks } from '../theory/units';
import type { Dynamics } from './energy';
import type { FollowedChord } from './followed';
import type { Turnarounds } from './turnarounds';

/** Bars that may be counted in. */
export const COUNT_INS = [0, 1, 2] as const;
/** What comes before the first chorus. */
export const INTROS = ['none', 'turnaround', 'pickup', 'drums'] as const;
/** How the choruses build on each other. */
export const ARCS = ['breathe', 'steady', 'trade fours', 'trade twos'] as const;
/** How the last chorus closes. */
export const ENDINGS = ['cadence', 'held', 'stop'] as const;

/** How the song runs over time. */
export interface Plan {
  readonly countInBars: (typeof COUNT_INS)[number];
  readonly intro: (typeof INTROS)[number];
  /** Number of choruses, or `null` to go on until stopped. */
  readonly choruses: number | null;
  readonly arc: (typeof ARCS)[number];
  readonly dynamics: Dynamics;
  readonly turnarounds: Turnarounds;
  readonly ending: (typeof ENDINGS)[number];
  readonly ritard: boolean;
  readonly repeat: BarRange | null;
  readonly countBetween: boolean;
  readonly keys:
    | { readonly kind: 'same' }
    | { readonly kind: 'fourths' }
    | { readonly kind: 'list'; readonly keys: readonly PitchClass[] };
  readonly tempo:
    | { readonly kind: 'fixed' }
    | { readonly kind: 'ramp'; readonly from: Bpm; readonly step: number; readonly every: number }
    | { readonly kind: 'alternate'; readonly slow: Bpm };
  /** Where the click falls while the band plays; counts are always whole. */
  readonly click: ClickPlace;
  readonly dropOut: DropOut | null;
  readonly sounding: Sounding;
}

/** What bass, chords and drums are played on. */
export type Instruments = Pick<Style, 'bass' | 'chords' | 'kit'> & { readonly second?: SecondVoice };

/** Everything that determines what the band plays. */
export interface Program {
  /** One chorus in the song key. */
  readonly chart: Chart;
  readonly style: Style;
  /** The player's target tempo. */
  readonly tempo: Bpm;
  readonly plan: Plan;
  /**
   * The home note of the harp in hand (2 draw), as a MIDI number, by song key: with room asked for, chords stay below it.
   * A key left out has the usual roof.
   */
  readonly harpHome?: Readonly<Partial<Record<number, number>>>;
  /**
   * What the lead plays, by song key: for each chorus in turn the notes of a whole chorus, on the straight grid (the
   * feel swings them). Keys left out have no lead.
   */
  readonly leads?: Readonly<Partial<Record<number, readonly (readonly NoteEvent[])[]>>>;
  /** Whether the harp is heard: the chords thin out while it plays, and answer while it rests; as ever when absent. */
  readonly harp?: 'plays' | 'rests';
  /** Chords that are followed in place of the chart's, in the order they were played; none when absent. */
  readonly followed?: readonly FollowedChord[];
  /** What is played from a chorus on (from 0) in place of this. */
  readonly later?: { readonly from: number; readonly program: Program };
}

/** A tempo and where it begins. */
export interface TempoStep {
  /** From the section's start; the first step is at 0. */
  readonly at: Ticks;
  readonly bpm: Bpm;
}

/** A stretch of music the transport plays in one go: a count-in, an intro, one chorus (or repeated range), an ending. */
export interface Section {
  readonly index: number;
  readonly kind: 'count-in' | 'intro' | 'chorus' | 'ending';
  /** Which chorus this is or leads into, from 0. */
  readonly chorus: number;
  /** The bars that sound, tick 0 = the section's start, in the key of this chorus. */
  readonly chart: Chart;
  /** For each bar of `chart`, its index in the whole chorus; `null` in count-ins, intros and endings. */
  readonly barNumbers: readonly (number | null)[];
  readonly score: Score;
  readonly tempo: readonly TempoStep[];
  /** Where parts and limbs play against the beat; on it when absent. */
  readonly placing?: Placing;
  /** The instruments that play it, where they are not those that play now. */
  readonly instruments?: Instruments;
  /** True when nothing follows. */
  readonly last: boolean;
}
