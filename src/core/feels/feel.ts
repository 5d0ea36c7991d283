import type { MeterName } from '../chart/chart';
import type { LimbStyle } from '../score/placing';
import type { BassVoice, ChordVoice, Kit } from '../score/voices';
import type { BassPattern } from './bass-pattern';
import type { Comping } from './comping-pattern';
import type { DrumPattern } from './drum-pattern';
import type { Fills } from './fills';
import type { ByLevel } from './level';
import type { TurnaroundId } from './turnaround-figures';

/** What everybody needs of a feel. */
export interface Feel {
  readonly id: string;
  readonly name: string;
  /** `12/8` for compound feels; `null` keeps the chart's own meter. */
  readonly meter: MeterName | null;
  /** Long : short of an off-beat pair; `by tempo` has a ratio for each part, as jazz trios play. */
  readonly swing: number | 'by tempo';
  /** The note value whose pairs swing. */
  readonly swungUnit: 'eighth' | '16th';
  /** Usual tempo range and a start value, in beats a minute. */
  readonly tempo: { readonly low: number; readonly usual: number; readonly high: number };
  /** The players a feel usually has. */
  readonly bass: BassVoice;
  readonly chords: ChordVoice;
  readonly kit: Kit;
  /** The turnarounds of a major blues in this feel, the usual one first. */
  readonly turnarounds: readonly TurnaroundId[];
}

/** How a feel is played: everything else about it but its loudness. */
export interface Playing {
  /** Whose limbs the drummer's fall like, against the beat. */
  readonly limbs: LimbStyle;
  readonly drumming: {
    readonly patterns: ByLevel<readonly DrumPattern[]>;
    readonly fills: Fills;
    /** Brushes sweep the snare under the pattern; false where it keeps both hands busy. */
    readonly sweeps: boolean;
  };
  readonly bassLine: {
    readonly patterns: ByLevel<readonly BassPattern[]>;
    /** Patterns may hand over to a walk in the last two bars. */
    readonly walksOut: boolean;
    /** How a turnaround's line is played: L its note of this beat, r that note again, - hold, . rest. */
    readonly turnaround: ByLevel<string>;
  };
  readonly comping: Comping;
}

/** A feel as the players have it. */
export type PlayedFeel = Feel & Playing;
