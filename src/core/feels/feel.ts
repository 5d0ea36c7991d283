import type { MeterName } from '../chart/chart';
import type { BassVoice, ChordVoice, Kit } from '../score/voices';

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

/** How full a bar is played: light, normal, driving. */
export type Level = 0 | 1 | 2;

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
