import type { LevelReading } from './reed-meter';

/** The level of a reed, of the whole sound and of its highs, at one time. */
export interface ReedReading extends LevelReading {
  /** dB. */
  readonly whole: number;
  /** dB. */
  readonly bright: number;
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

/** Seconds looked at before and after the lowest level; slower swells are tremolo. */
const MOMENT = { fall: 0.08, rise: 0.06 } as const;
/** Readings in which a rise is at its steepest, and around the lowest level in which the others are at theirs. */
const STEEP = 3;
const AROUND = 3;
/** Falls and rises beyond so many dB tell no more; a steep rise is at most as steep. */
const DEEPEST = 20;
const STEEPEST = 12;
/** Swings of pitch below this are none, and above this tell no more. Cents. */
const SWING = { least: 5, most: 35 } as const;
/**
 * What speaks for a new attack, per dB of the dip of the whole sound, of its highs and of the reed, per dB of the
 * steepest rise of the reed and per cent of swing, as what trembles in pitch trembles in level: a logistic regression
 * over some 2700 dips of generated takes, a third of them attacks. A reed in a room dips by interference
 * alone, hence the little that its own dip tells beside that of the whole.
 */
const WEIGHTS = { whole: 0.32, bright: 0.31, reed: -0.23, steep: 0.41, swing: -0.057, none: -4.7 } as const;
/** Dips of the reed that are looked at: a fall and a rise, dB. */
const LEAST = { fall: 2, rise: 3 } as const;
/** The new note is at most so much softer than the one before: the tail of a room wavers too. dB. */
const SOFTER = 14;
/** The beginning is where the level has come this far up from its lowest. dB. */
const BEGUN = 2;

type Level = 'level' | 'whole' | 'bright';

/** The readings of the last moments, the oldest first, and the place of the lowest level that may be a dip. */
interface Dip {
  readonly readings: readonly ReedReading[];
  readonly low: number;
}

const highest = (readings: readonly ReedReading[], what: Level): number =>
  readings.reduce((most, each) => Math.max(most, each[what]), Number.NEGATIVE_INFINITY);

/** Fall before and rise after the lowest level, dB; of other levels than the reed's the lowest is near its. */
const turn = ({ readings, low }: Dip, what: Level): { readonly fall: number; readonly rise: number } => {
  const near =
    what === 'level'
      ? readings.slice(low, low + 1)
      : readings.slice(Math.max(0, low - AROUND), low + AROUND + 1);
  const least = near.reduce((sum, each) => Math.min(sum, each[what]), Number.POSITIVE_INFINITY);
  return {
    fall: highest(readings.slice(0, low + 1), what) - least,
    rise: highest(readings.slice(low), what) - least,
  };
};

const depth = ({ fall, rise }: { readonly fall: number; readonly rise: number }): number =>
  Math.min(fall, rise, DEEPEST);

const steepest = ({ readings, low }: Dip): number => {
  let most = 0;
  for (let i = low; i < readings.length; i += 1) {
    const after = readings[Math.min(i + STEEP, readings.length - 1)];
    most = Math.max(most, (after?.level ?? 0) - (readings[i]?.level ?? 0));
  }
  return Math.min(most, STEEPEST);
};

const isAttack = (dip: Dip): boolean => {
  const reed = turn(dip, 'level');
  if (reed.fall < LEAST.fall || reed.rise < LEAST.rise || reed.fall - reed.rise > SOFTER) return false;
  const swing = dip.readings[dip.low]?.swing ?? 0;
  const score =
    WEIGHTS.none +
    WEIGHTS.whole * depth(turn(dip, 'whole')) +
    WEIGHTS.bright * depth(turn(dip, 'bright')) +
    WEIGHTS.reed * depth(reed) +
    WEIGHTS.steep * steepest(dip) +
    WEIGHTS.swing * Math.max(0, Math.min(SWING.most, swing) - SWING.least);
  return score > 0;
};

const lowestSince = (readings: readonly ReedReading[], since: number): number => {
  let low = readings.length - 1;
  for (let i = low; i >= 0 && (readings[i]?.time ?? 0) >= since; i -= 1)
    if ((readings[i]?.level ?? 0) < (readings[low]?.level ?? 0)) low = i;
  return low;
};

/** Notices a reed struck anew while it still sounds. One for each stream. */
export const createReattack = (): Reattack => {
  let readings: ReedReading[] = [];
  return {
    step(reading) {
      const { time } = reading;
      readings.push(reading);
      while ((readings[0]?.time ?? time) < time - MOMENT.rise - MOMENT.fall) readings.shift();
      const low = lowestSince(readings, time - MOMENT.rise);
      const least = readings[low]?.level ?? 0;
      // The foot of a slower rise lies before what is looked at.
      const foot = readings.slice(Math.max(0, low - AROUND), low).some(({ level }) => level < least);
      if (foot || reading.level - least < LEAST.rise) return null;
      const from = readings.findIndex((each) => each.time >= (readings[low]?.time ?? 0) - MOMENT.fall);
      if (!isAttack({ readings: readings.slice(from), low: low - from })) return null;
      const at = readings.find((each, i) => i > low && each.level > least + BEGUN)?.time ?? time;
      readings = [reading];
      return at;
    },
    reset() {
      readings = [];
    },
  };
};
