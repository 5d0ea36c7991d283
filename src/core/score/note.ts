import { asMidi, asTicks } from '../theory/units';
import type { NoteEvent, PartId } from './score';

/** A note in the making; times in ticks, not yet rounded. */
export interface NoteDraft {
  readonly at: number;
  readonly length: number;
  readonly pitch: number;
  readonly velocity: number;
}

/** Makes an event: whole ticks, at least one tick long, velocity a whole number from 1 to 127. */
export const noteEvent = (part: PartId, { at, length, pitch, velocity }: NoteDraft): NoteEvent => ({
  part,
  at: asTicks(at),
  length: asTicks(Math.max(1, length)),
  pitch: asMidi(pitch),
  velocity: Math.min(127, Math.max(1, Math.round(velocity))),
});
