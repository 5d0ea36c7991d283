import { attackTime } from './attack';
import { createSoundChooser, type HarpInHand } from './choose-sounds';
import { createFrontEnd } from './front-end';
import type { HeardNote } from './heard-note';
import { measureNote } from './measure-note';
import { createSpanFinder, type Span } from './note-spans';
import type { PitchFrame } from './pitch-frame';
import { reachableRanges } from './reachable';
import { createReattack } from './reattack';
import { createReedMeter } from './reed-meter';

/** What has been heard of a note now: that it has surely begun (`to` null), or all of it. */
export interface NoteListener {
  /**
   * Takes the next raw samples, without the band where it could be subtracted, and the frames made of them. For the
   * same result whatever the cut, hand over as many samples as make one frame.
   */
  push(samples: Float32Array, frames: readonly PitchFrame[]): readonly HeardNote[];
  /** Ends what still sounds. */
  end(): readonly HeardNote[];
}

export interface NoteListenerOptions extends HarpInHand {
  /** Hz. */
  readonly sampleRate: number;
}

/** Samples in a hop at the working rate, as the tracker's. */
const HOP = 64;
/** Readings further apart than this ratio are of different notes. */
const SAME_REED = 2 ** (50 / 1200);

/** Turns samples and frames into notes. Throws RangeError on a reference outside 440–446 Hz. */
export const createNoteListener = (options: NoteListenerOptions): NoteListener => {
  const { sampleRate, harp, reference } = options;
  const lowest = Math.min(...reachableRanges(harp, reference).map(({ from }) => from));
  const front = createFrontEnd({ sampleRate, hop: HOP, lowest: 0.85 * lowest });
  const meter = createReedMeter(front.rate, HOP);
  const reattack = createReattack();
  const chooser = createSoundChooser(options);
  const spans = createSpanFinder((frequency, first) => attackTime(meter.past(frequency), first));
  let pitch: number | null = null;

  const noted = (found: readonly Span[]): readonly HeardNote[] =>
    found.map((span) => chooser.choose(measureNote(span), span.to !== null));

  /** Looks whether the reed in hand was sounded again. */
  const listenAgain = (whole: number): readonly Span[] => {
    const now = spans.steady();
    const moved = now === null || pitch === null || Math.max(now / pitch, pitch / now) > SAME_REED;
    pitch = now;
    if (moved) reattack.reset();
    if (now === null) return [];
    const begun = reattack.step({ ...meter.now(now), whole });
    return begun === null ? [] : spans.reattack(begun);
  };

  return {
    push(samples, frames) {
      front.push(samples, (hop) => meter.push(hop));
      return frames.flatMap((frame) => noted([...spans.frame(frame), ...listenAgain(frame.level)]));
    },
    end: () => noted(spans.end()),
  };
};
