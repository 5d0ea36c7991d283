import type { SoundFrame } from './sound-frame';

/** What frames say of a window of sound that has passed. */
export interface PastFrames {
  /** In its middle, Hz. */
  readonly pitch: number;
  /** Mean. */
  readonly clarity: number;
  /** Whether one note gave way to another, or glides. */
  readonly moved: boolean;
}

/** The latest frames of a stream. */
export interface FramePast {
  take(frame: SoundFrame): void;
  /** Seconds up to which anything is known. */
  latest(): number;
  /** What frames say of the window with its middle at a time, seconds. */
  around(time: number): PastFrames;
}

/** A pitch that is so clear, and another by so much at the end of a window, octaves, is of two notes, or a glide. */
const CLEAR = 0.6;
const MOVED = 80 / 1200;
/** A pitch is told so long after it began. Seconds. */
const TOLD_LATE = 0.012;
/** Frames kept: a third of a second. */
const MOST = 64;

/** Remembers frames until windows of so many seconds have passed. */
export const createFramePast = (seconds: number): FramePast => {
  let frames: SoundFrame[] = [];
  return {
    take(frame) {
      frames.push(frame);
      if (frames.length > MOST) frames = frames.slice(MOST / 2);
    },
    latest: () => frames.at(-1)?.known ?? 0,
    around(time) {
      const near = frames.filter(({ known }) => known > time - seconds / 2 + TOLD_LATE);
      const [first] = near;
      if (first === undefined) return { pitch: 0, clarity: 0, moved: false };
      const middle = near.reduce((best, each) =>
        Math.abs(each.centre - time) < Math.abs(best.centre - time) ? each : best,
      );
      const clarity = near.reduce((sum, each) => sum + each.clarity, 0) / near.length;
      const last = near.at(-1)?.frequency ?? 0;
      const moved = first.frequency > 0 && last > 0 && Math.abs(Math.log2(first.frequency / last)) > MOVED;
      return { pitch: middle.frequency, clarity, moved: moved && clarity > CLEAR };
    },
  };
};
