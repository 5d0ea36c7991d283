import type { FeelId } from '../feels/feels';
import type { PartId } from '../score/score';
import type { SwingChoice } from '../score/swing';
import type { BassVoice, ChordVoice, Kit, SecondVoice } from '../score/voices';

/** How long the band plays stop-time. */
export const STOP_TIMES = ['off', 'first four bars', 'whole chorus'] as const;

/** How fast the band moves over the bars: as the feel does, with the backbeat on 3, or twice as fast. */
export const TIMES = ['usual', 'half-time', 'double-time'] as const;

/** The player's choices about how the band plays; everything random comes from `seed`. */
export interface Style {
  readonly feel: FeelId;
  readonly bass: BassVoice;
  readonly chords: ChordVoice;
  /** A second chord player beside the first. */
  readonly second: SecondVoice | 'none';
  readonly kit: Kit;
  readonly swing: SwingChoice;
  /** Milliseconds a part plays behind (+) or ahead of (−) the beat; applied by the transport, never in ticks. */
  readonly push: Readonly<Partial<Record<PartId, number>>>;
  readonly time: (typeof TIMES)[number];
  readonly stopTime: (typeof STOP_TIMES)[number];
  /** Keeps chords below the harp's usual register. */
  readonly leaveRoom: boolean;
  readonly seed: number;
}
