import type { MeterName } from '../chart/chart';
import type { PartId } from './score';

export type FeelId =
  | 'shuffle'
  | 'slow-12-8'
  | 'swing'
  | 'straight'
  | 'double-shuffle'
  | 'jump'
  | 'boogie'
  | 'rhumba'
  | 'second-line'
  | 'train'
  | 'rock'
  | 'minor-slow';

export type BassVoice = 'upright-bass' | 'fingered-bass';
export type ChordVoice = 'piano' | 'electric-piano' | 'organ' | 'guitar';
export type Kit = 'sticks' | 'brushes';

/** What a feel is, apart from its patterns. */
export interface Feel {
  readonly id: FeelId;
  readonly name: string;
  /** `12/8` for compound feels; `null` keeps the chart's own meter. */
  readonly meter: MeterName | null;
  /** Long : short of an off-beat pair; `by tempo` is the ride model (short note near 100 ms). */
  readonly swing: number | 'by tempo';
  /** Usual tempo range and a start value, in beats a minute. */
  readonly tempo: { readonly low: number; readonly usual: number; readonly high: number };
  readonly bass: BassVoice;
  readonly chords: ChordVoice;
  readonly kit: Kit;
}

/** The player's choices about how the band plays; everything random comes from `seed`. */
export interface Style {
  readonly feel: FeelId;
  readonly bass: BassVoice;
  readonly chords: ChordVoice;
  readonly kit: Kit;
  /** `feel` takes the feel's own; a number is a ratio 1–3.5. */
  readonly swing: 'feel' | 'by tempo' | number;
  /** Milliseconds a part plays behind (+) or ahead of (−) the beat; applied by the transport, never in ticks. */
  readonly push: Readonly<Partial<Record<PartId, number>>>;
  readonly stopTime: 'off' | 'first four bars' | 'whole chorus';
  /** Keeps chords below the harp's usual register. */
  readonly leaveRoom: boolean;
  readonly seed: number;
}
