import type { LevelReading } from './reed-meter';

/** The level of a reed, and of the whole sound, at one time. */
export interface ReedReading extends LevelReading {
  /** dB. */
  readonly whole: number;
  /** Swing of the pitch just before, cents. */
  readonly swing: number;
}

/** Finds where one reed is sounded again: its level falls and rises within a few hundredths of a second. */
export interface Reattack {
  /** Takes the next levels; returns the time at which the reed began anew once that is sure, else null. */
  step(reading: ReedReading): number | null;
  /** Forgets what was heard: another note begins. */
  reset(): void;
}

/**
 * Rise of the reed over its lowest level of the last moment, fall before it, and rise of the whole sound along with
 * it, dB; with a band beside it, less of the whole is enough where the reed rises much.
 */
const RISE = 7;
const FALL = 5;
/** A pitch that swings more than so many cents trembles: its level then rises more, too, before it is an attack. */
const TREMBLES = { cents: 14, rise: 12, whole: 9 } as const;
const WHOLE_RISE = { usual: 6.5, least: 3.5, reed: 16 } as const;
/** Seconds in which the rise must happen, and before that the fall; slower swells are tremolo. */
const MOMENT = { rise: 0.025, fall: 0.09 } as const;
/** The new note is at most so much softer than the one before: the tail of a room wavers too. dB. */
const SOFTER = 9;
/** The beginning is where the level has come this far up from its lowest. dB. */
const BEGUN = 2;

/** Notices a reed struck anew while it still sounds. One for each stream. */
export const createReattack = (): Reattack => {
  let readings: ReedReading[] = [];
  return {
    step(reading) {
      const { time, level } = reading;
      readings.push(reading);
      readings = readings.filter((each) => each.time >= time - MOMENT.rise - MOMENT.fall);
      const rising = readings.filter((each) => each.time >= time - MOMENT.rise);
      const least = Math.min(...rising.map((each) => each.level));
      const low = readings.findLastIndex((each) => each.level === least);
      const rise = level - least;
      const whole = reading.whole - Math.min(...readings.slice(low).map((each) => each.whole));
      const trembles = reading.swing > TREMBLES.cents;
      if (trembles && (rise < TREMBLES.rise || whole < TREMBLES.whole)) return null;
      if (rise < RISE || whole < (rise < WHOLE_RISE.reed ? WHOLE_RISE.usual : WHOLE_RISE.least)) return null;
      const before = Math.max(...readings.slice(0, low + 1).map((each) => each.level));
      if (before - least < FALL || before - level > SOFTER) return null;
      const begun = readings.findIndex((each, i) => i > low && each.level > least + BEGUN);
      const at = readings[begun]?.time ?? time;
      readings = [reading];
      return at;
    },
    reset() {
      readings = [];
    },
  };
};
