import {
  CLOCK,
  CONTINUE,
  type MidiBytes,
  PULSE_TICKS,
  PULSES_OF_POSITION,
  START,
  STOP,
  songPosition,
} from './out-messages';
import type { OutsidePulse } from './outside-event';

/** A clock that an instrument outside of the page follows. */
export interface OutClock {
  /** Whether the instrument was told to run. */
  readonly runs: boolean;
  /** Pulses from the beginning of the song to the last one sent; null before the first. */
  readonly position: number | null;
  /** Pulses from the beginning of the song to that of each section that was heard. */
  readonly starts: ReadonlyMap<number, number>;
}

/** Before the first beat. */
export const CLOCK_AT_REST: OutClock = { runs: false, position: null, starts: new Map() };

/** The beginnings of sections, with that of this pulse's: it follows what was heard before it. */
const startsWith = (
  { starts, position }: OutClock,
  { section: { index } }: OutsidePulse,
): ReadonlyMap<number, number> => {
  if (starts.has(index)) return starts;
  // Nothing is left out between sections: the one that begins follows the last pulse.
  return new Map([...starts, [index, position === null ? 0 : position + 1]]);
};

/** What goes out with a pulse, and the clock after it. */
interface ClockStep {
  readonly clock: OutClock;
  readonly messages: readonly MidiBytes[];
}

/**
 * The clock at its next pulse. While the band counts in, pulses alone go out, so that an instrument finds the tempo; it
 * starts with the song. Where the band jumps, or goes on after a pause, it is stopped, told the song position at the next
 * sixteenth, and goes on from there.
 */
export const clockAt = (clock: OutClock, pulse: OutsidePulse): ClockStep => {
  const { runs, position: before } = clock;
  if (pulse.section.countsIn && before === null) return { clock, messages: [CLOCK] };
  const starts = startsWith(clock, pulse);
  const position = (starts.get(pulse.section.index) ?? 0) + Math.round(pulse.ticks / PULSE_TICKS);
  const goesOn = (messages: readonly MidiBytes[], running: boolean): ClockStep => ({
    clock: { runs: running, position, starts },
    messages,
  });
  if (runs && before !== null && position === before + 1) return goesOn([CLOCK], true);
  if (before === null && position === 0) return goesOn([START, CLOCK], true);
  const stop = runs ? [STOP] : [];
  return position % PULSES_OF_POSITION === 0
    ? goesOn([...stop, songPosition(position / PULSES_OF_POSITION), CONTINUE, CLOCK], true)
    : goesOn([...stop, CLOCK], false);
};

/** The clock of a band that falls silent. @param forGood whether it will not go on from there. */
export const clockStopped = (clock: OutClock, forGood: boolean): ClockStep => ({
  clock: forGood ? CLOCK_AT_REST : { ...clock, runs: false },
  messages: clock.runs ? [STOP] : [],
});
