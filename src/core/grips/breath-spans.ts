import type { SoundFrame } from './sound-frame';

/** A stretch of sound from an attack to silence or the next attack. */
export interface BreathSpan {
  readonly id: number;
  /** Seconds. */
  readonly from: number;
  /** dB re full scale, the loudest so far. */
  peak: number;
  /** Frames in it, and those of them that have a pitch. */
  frames: number;
  voiced: number;
}

/** Cuts a stream into breaths by its level. */
export interface BreathSpans {
  /** Takes the next frame; tells whether the breath before it has ended. */
  frame(frame: SoundFrame): boolean;
  /** The breath that sounds; null in silence. */
  now(): BreathSpan | null;
}

/** An attack rises so far above the lowest of the last frames, which lies so far below what sounded. dB. */
const RISE = 6;
const DIP = 9;
/** Frames looked back at: 43 ms. */
const BACK = 8;
/** No attack comes sooner after another. Seconds. */
const REFRACTORY = 0.065;
/** A breath is over so far below its peak, dB: the rest is the room. */
const OVER = 22;
/** What begins in the tail of another breath is at most so far below it, dB, and the tail falls so fast, dB a second. */
const IN_TAIL = 16;
const TAIL_FALLS = 100;
/** By how much the level is late. Seconds. */
const LATE = 0.012;

/** @param gate level below which nothing counts, dB re full scale. */
export const createBreathSpans = (gate: number): BreathSpans => {
  const levels = new Float64Array(BACK).fill(-200);
  let span: BreathSpan | null = null;
  let ids = 0;
  let next = 0;
  let tail = { level: -200, at: 0 };

  return {
    now: () => span,
    frame({ known, level, frequency }) {
      const lowest = Math.min(...levels);
      levels[next] = level;
      next = (next + 1) % BACK;
      const least = Math.max(gate, tail.level - TAIL_FALLS * (known - tail.at));
      const rises = level > least && level >= lowest + RISE;
      const again = span !== null && rises && lowest <= span.peak - DIP && known - span.from > REFRACTORY;
      const over = span !== null && (level < gate || level < span.peak - OVER);
      const ended = again || over;
      if (span !== null && ended) {
        tail = { level: span.peak - IN_TAIL, at: known };
        span = null;
      }
      if (span === null && rises && !over) {
        span = { id: ids, from: known - LATE, peak: level, frames: 0, voiced: 0 };
        ids += 1;
      }
      if (span !== null) {
        span.peak = Math.max(span.peak, level);
        span.frames += 1;
        if (frequency > 0) span.voiced += 1;
      }
      return ended;
    },
  };
};
