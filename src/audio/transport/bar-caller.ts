import type { Playhead } from '../../core/arranger/playhead';
import { nextBarTime, playheadAt } from './playhead-at';
import type { Timeline } from './timeline';

export interface BarCallerOptions {
  readonly outputTime: () => number;
  readonly timeline: () => Timeline;
  readonly call: (position: Playhead | null) => void;
}

/** Tells the bar that leaves the loudspeaker, at its bar line. */
export interface BarCaller {
  /** Looks where the music is; call about every 100 ms. Between two looks a timer meets the bar line itself. */
  look(): void;
  /** Tells that nothing is heard any more, unless that was told already. */
  stop(): void;
}

/** Longest wait for a bar line that a look sets a timer for, in seconds. */
const SOON = 0.15;

/** Calls once for every bar that is heard, at its beginning. */
export const createBarCaller = ({ outputTime, timeline, call }: BarCallerOptions): BarCaller => {
  let called: Playhead | null = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const announce = (position: Playhead | null) => {
    called = position;
    call(position);
  };
  const look = () => {
    clearTimeout(timer);
    const time = outputTime();
    const position = playheadAt(timeline(), time);
    if (position === null) return;
    if (called?.section !== position.section || called.bar !== position.bar) announce(position);
    const next = nextBarTime(timeline(), time);
    if (next !== null && next - time < SOON) timer = setTimeout(look, (next - time) * 1000 + 1);
  };
  return {
    look,
    stop: () => {
      clearTimeout(timer);
      if (called !== null) announce(null);
    },
  };
};
