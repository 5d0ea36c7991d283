import { elementAt } from '../theory/element-at';
import type { LevelReading } from './reed-meter';

/** The level of a reed, of the whole sound and of its highs, at one time. */
export interface ReedReading extends LevelReading {
  /** dB. */
  readonly whole: number;
  /** dB. */
  readonly bright: number;
  /** Of the reed, Hz. */
  readonly frequency: number;
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
/** Seconds around a lowest level in which it is the lowest. */
const LOWEST_OF = 0.015;
/** Readings in which a fall is at its steepest, and around the lowest level in which the others are at theirs. */
const STEEP = 3;
const AROUND = 3;
/** Falls and rises beyond so many dB tell no more; a steep fall is at most as steep. */
const DEEPEST = 20;
const STEEPEST = 12;
/** A new note this much softer than the one before begins to look like the tail of a room. dB. */
const SOFTER = 6;
/** What is low answers late: octaves are counted from here. Hz. */
const MIDDLE = 500;
/** Highs that come back so much less than they fell, dB, are still those of a new attack. */
const DARKER = 3;
/**
 * What speaks for a new attack: dB by which the whole sound rises, and how steeply its highs fall, in dB and by its
 * square, and rise again, as a tongue or a new breath cuts them off and brings them back, where hands and vibrato do not,
 * nor a room in which one echo takes out the other; and against it dB by which it is softer than what was before, and its
 * highs are, and 10 ms it takes to come half-way up again, the more the higher the reed. A logistic regression over some
 * 7300 dips of generated takes, half of them attacks, with and without a band; in lines attacks of the same reed are
 * rarer, for which `none` is 0.94 lower.
 */
const WEIGHTS = {
  rise: 0.308,
  softer: -0.123,
  darker: -0.337,
  steep: 1.119,
  square: -0.495 / STEEPEST,
  back: 0.332,
  late: -0.101,
  lateAnOctave: -0.245,
  none: -6.7,
} as const;
/** Dips of the reed that are looked at: a fall and a rise, dB. */
const LEAST = { fall: 2, rise: 3 } as const;
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

/** Readings are never further apart, seconds. */
const STEP_AT_MOST = 0.004;

const secondsBetween = (one: ReedReading | undefined, other: ReedReading | undefined): number =>
  (other?.time ?? 0) - (one?.time ?? 0);

/** What a level falls before its lowest and rises after it, dB. */
interface Turn {
  readonly fall: number;
  readonly rise: number;
}

/** What a level lacks after a dip of what it was before, beyond so many dB that it may. */
const lacking = ({ fall, rise }: Turn, may: number): number =>
  Math.min(DEEPEST, Math.max(0, fall - rise - may));

/** Fall before and rise after the lowest level, dB; of other levels than the reed's the lowest is near its. */
const turn = ({ readings, low }: Dip, what: Level): Turn => {
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

/** The steepest rise of the highs after the lowest level. */
const steepestRise = ({ readings, low }: Dip): number => {
  let most = 0;
  for (let i = low; i + STEEP < readings.length; i += 1)
    most = Math.max(most, (readings[i + STEEP]?.bright ?? 0) - (readings[i]?.bright ?? 0));
  return Math.min(most, STEEPEST);
};

/** The steepest fall of the highs before the lowest level. */
const steepestFall = ({ readings, low }: Dip): number => {
  let most = 0;
  for (let i = low; i >= 0 && secondsBetween(readings[i], readings[low]) <= MOMENT.rise; i -= 1)
    most = Math.max(most, (readings[Math.max(0, i - STEEP)]?.bright ?? 0) - (readings[i]?.bright ?? 0));
  return Math.min(most, STEEPEST);
};

/** Place where the level has come half-way up from its lowest, of a dip so deep. */
const halfUp = ({ readings, low }: Dip, depth: number): number => {
  const half = (readings[low]?.level ?? 0) + Math.min(depth, DEEPEST) / 2;
  return readings.findIndex(({ level }, i) => i >= low && level >= half);
};

/** When the rise began that comes half-way up: in a long rest a room may waver before it. */
const beginningOf = (dip: Dip): number => {
  const { readings, low } = dip;
  const { fall, rise } = turn(dip, 'level');
  const floor = (readings[low]?.level ?? 0) + BEGUN;
  let begun = Math.max(low + 1, halfUp(dip, Math.min(fall, rise)));
  while (begun > low + 1 && (readings[begun - 1]?.level ?? 0) > floor) begun -= 1;
  return elementAt(readings, begun).time;
};

const isAttack = (dip: Dip): boolean => {
  const { readings, low } = dip;
  const reed = turn(dip, 'level');
  if (reed.fall < LEAST.fall || reed.rise < LEAST.rise) return false;
  const late = 100 * secondsBetween(readings[low], readings[halfUp(dip, Math.min(reed.fall, reed.rise))]);
  const steep = steepestFall(dip);
  const score =
    WEIGHTS.none +
    WEIGHTS.rise * Math.min(turn(dip, 'whole').rise, DEEPEST) +
    WEIGHTS.softer * lacking(reed, SOFTER) +
    WEIGHTS.darker * lacking(turn(dip, 'bright'), DARKER) +
    WEIGHTS.back * steepestRise(dip) +
    (WEIGHTS.steep + WEIGHTS.square * steep) * steep +
    (WEIGHTS.late + WEIGHTS.lateAnOctave * Math.log2((readings[low]?.frequency ?? MIDDLE) / MIDDLE)) * late;
  return score > 0;
};

/** Notices a reed struck anew while it still sounds. One for each stream. */
export const createReattack = (): Reattack => {
  let readings: ReedReading[] = [];
  return {
    step(reading) {
      const { time } = reading;
      readings.push(reading);
      while ((readings[0]?.time ?? time) < time - MOMENT.rise - MOMENT.fall) readings.shift();
      // Looked at once all of the rise is there.
      const low = readings.findIndex((each) => each.time >= time - MOMENT.rise);
      const least = readings[low];
      if (least === undefined || secondsBetween(least, reading) < MOMENT.rise - STEP_AT_MOST) return null;
      const near = readings.filter((each) => Math.abs(each.time - least.time) <= LOWEST_OF);
      if (near.some(({ level }) => level < least.level) || !isAttack({ readings, low })) return null;
      return beginningOf({ readings, low });
    },
    reset() {
      readings = [];
    },
  };
};
