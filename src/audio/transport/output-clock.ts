/**
 * Which moment of the audio clock leaves the loudspeaker now. The context's own time moves in steps of a buffer
 * and runs ahead of what is heard; the output timestamp carried on by the page's clock is smooth. Pure: the
 * readings are handed in.
 */
export interface ClockReading {
  readonly running: boolean;
  /** Seconds of the audio clock. */
  readonly currentTime: number;
  /** The sample leaving the device and the page time (ms) at which it did; absent where the browser cannot tell. */
  readonly output: { readonly contextTime: number; readonly performanceTime: number } | null;
  /** Seconds between the audio clock and the loudspeaker, used when there is no output timestamp. */
  readonly latency: number;
  /** Page time now, in ms. */
  readonly now: number;
}

/** The time of what is heard, behind the time of what is computed. */
export interface OutputClock {
  /** Seconds of the audio clock that leave the loudspeaker now; never runs backwards between two `resync`. */
  time(): number;
  /** Forgets earlier readings: after a hidden page, a suspended context, another device. */
  resync(): void;
}

/** A timestamp older than this is of a page or context that stood still: time is not carried on from it. */
const CARRY_ON = 0.25;
/** Output farther than this behind the clock is a wrong reading (some browsers report zeros at first). */
const FARTHEST_BEHIND = 2;

const fromTimestamp = ({ output, currentTime, now }: ClockReading): number | null => {
  if (output === null || output.performanceTime <= 0) return null;
  const age = Math.min(Math.max((now - output.performanceTime) / 1000, 0), CARRY_ON);
  const time = output.contextTime + age;
  return time <= currentTime && time >= currentTime - FARTHEST_BEHIND ? time : null;
};

/** Creates a clock over a source of readings. */
export const createOutputClock = (read: () => ClockReading): OutputClock => {
  let last = Number.NEGATIVE_INFINITY;
  return {
    time: () => {
      const reading = read();
      const leaving = fromTimestamp(reading) ?? reading.currentTime - reading.latency;
      if (!reading.running && last > Number.NEGATIVE_INFINITY) return last;
      last = Math.max(last, leaving);
      return last;
    },
    resync: () => {
      last = Number.NEGATIVE_INFINITY;
    },
  };
};

/** Reads the clocks of a context. `delay` is what comes after them (the limiter, a late loudspeaker), in seconds. */
export const readContext = (context: AudioContext, delay: number): ClockReading => {
  const output = typeof context.getOutputTimestamp === 'function' ? context.getOutputTimestamp() : null;
  const { contextTime, performanceTime } = output ?? {};
  return {
    running: context.state === 'running',
    currentTime: context.currentTime - delay,
    output:
      contextTime === undefined || performanceTime === undefined
        ? null
        : { contextTime: contextTime - delay, performanceTime },
    latency: context.outputLatency || context.baseLatency || 0,
    now: performance.now(),
  };
};
