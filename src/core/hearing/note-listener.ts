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

/**
 * A new note is at most so far below what has been played, dB: what is softer is the band, or a room. The measure falls
 * while nothing is played, dB a second, so that whoever plays softer now is soon heard.
 */
const SOFTEST = 17;
const USUAL_FALLS = 5;
/** How far each note moves what counts as usual. */
const USUAL_SHARE = 0.3;

/** How loud the player has been of late. */
const createUsualLevel = () => {
  let level = Number.NEGATIVE_INFINITY;
  let last = 0;
  const at = (time: number): number => level - USUAL_FALLS * Math.max(0, time - last);
  return {
    at,
    take: (next: number, time: number): void => {
      const now = at(time);
      level = Number.isFinite(now) ? now + USUAL_SHARE * (next - now) : next;
      last = time;
    },
  };
};

/** Turns samples and frames into notes. Throws RangeError on a reference outside 440–446 Hz. */
export const createNoteListener = (options: NoteListenerOptions): NoteListener => {
  const { sampleRate, harp, reference } = options;
  const lowest = Math.min(...reachableRanges(harp, reference).map(({ from }) => from));
  const front = createFrontEnd({ sampleRate, hop: HOP, lowest: 0.85 * lowest });
  const meter = createReedMeter(front.rate, HOP);
  const reattack = createReattack();
  const chooser = createSoundChooser(options);
  const usual = createUsualLevel();
  const spans = createSpanFinder((frequency, first) => {
    const past = meter.past(frequency);
    const from = attackTime(past, first);
    if (from === null) return null;
    const level = Math.max(...past.flatMap((each) => (each.time >= from ? [each.level] : [])));
    return level > usual.at(first) - SOFTEST ? from : null;
  });
  let pitch: number | null = null;

  const noted = (found: readonly Span[]): readonly HeardNote[] =>
    found.map((span) => {
      const heard = measureNote(span);
      if (heard.to !== null) usual.take(heard.level, heard.to);
      return chooser.choose(heard, heard.to !== null);
    });

  /** Follows the pitch that stands; another one has another past. */
  const follow = (): void => {
    const now = spans.steady();
    if (now === null || pitch === null || Math.max(now / pitch, pitch / now) > SAME_REED) reattack.reset();
    pitch = now;
  };

  /** Looks whether the reed in hand was sounded again. */
  const listenAgain = (hop: Float64Array): readonly Span[] => {
    meter.push(hop);
    if (pitch === null) return [];
    const begun = reattack.step({ ...meter.now(pitch), whole: meter.whole() });
    return begun === null ? [] : spans.reattack(begun);
  };

  return {
    push(samples, frames) {
      const found: Span[] = [];
      front.push(samples, (hop) => found.push(...listenAgain(hop)));
      for (const frame of frames) {
        found.push(...spans.frame(frame));
        follow();
      }
      return noted(found);
    },
    end: () => noted(spans.end()),
  };
};
