/** What was measured of a microphone in its room, and what follows from it. */
import { isRecord } from '../theory/is-record';
import { median } from '../theory/statistics';
import { asSeconds, type Seconds } from '../theory/units';
import { calibrateGate } from './calibrate-gate';

/** What was measured of a microphone in its place. */
export interface Calibration {
  /** Id of the microphone; empty for the one the system prefers. */
  readonly id: string;
  readonly name: string;
  /** Level of the quiet room, dB re full scale; null where it was not measured. */
  readonly noise: number | null;
  /** From the page through the loudspeaker back to the page; null with headphones, or where it was not measured. */
  readonly roundTrip: Seconds | null;
  /** The same as the ear itself finds it while the band plays; null where it did not, or in calibrations from before it could. */
  readonly way: Seconds | null;
  /** How loud the loudspeaker comes back, dB re what was sent; null with headphones. */
  readonly leak: number | null;
  /** How much later than a click the player's notes are heard, all ways together; null where it was not measured. */
  readonly lag: Seconds | null;
  /** Whether the lag comes from taps on a key, with the microphone's own delay as the browser tells it. */
  readonly tapped: boolean;
  /** The level below which nothing counts, by `calibrateGate`, dB; null where room and band were not measured. */
  readonly gate: number | null;
}

/** What is taken where nothing was measured: the ends of what is believed, and guesses (common practice, no source). */
const BOUNDS = {
  noise: [-120, 0],
  roundTrip: [0, 1],
  way: [0, 1],
  leak: [-120, 40],
  lag: [-0.2, 1],
  gate: [-80, -30],
} as const;
/** Share of the room's moments that may be louder. */
const LOUDER = 0.05;
/** Notes played to clicks that are enough to know the player's lag, and how far apart they may lie. Seconds. */
const ALONG = { notes: 4, window: 0.3 } as const;

/** The level that a quiet room seldom exceeds, from levels of its moments, dB; null without any. */
export const noiseOf = (levels: readonly number[]): number | null =>
  levels.toSorted((a, b) => b - a)[Math.floor(LOUDER * levels.length)] ?? null;

/**
 * How much later than the clicks the notes are, seconds: each click with the nearest note after its way out; null when
 * too few were played with them. Both in seconds of one clock.
 */
export const lagOf = (clicks: readonly number[], onsets: readonly number[]): Seconds | null => {
  const lags = clicks.flatMap((click) => {
    const near = onsets.map((onset) => onset - click).filter((lag) => Math.abs(lag) < ALONG.window);
    return near.length === 0 ? [] : [near.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a))];
  });
  return lags.length < ALONG.notes ? null : asSeconds(median(lags));
};

/** The way may have become so much longer or shorter since; more is another way. Seconds. */
const MOVED = 0.15;

/** What is known of how late what is heard is. Seconds. */
export interface Lateness {
  readonly known: Calibration | null;
  /** How long the band takes to come back now; null while that is not known. */
  readonly way: number | null;
  /** Taken where nothing was measured. */
  readonly guess: number;
}

/**
 * Seconds by which what is heard is late, for placing it in the music. Browsers take another time from the air to the
 * page at each opening of a microphone, and ten milliseconds more once they were held up (measured in Chromium): where
 * the band is heard coming back, what was measured moves with its way.
 */
export const latenessOf = ({ known, way, guess }: Lateness): number => {
  const measured = known?.lag ?? known?.roundTrip ?? null;
  if (measured === null) return way ?? guess;
  const moved = known?.way == null || way === null ? 0 : way - known.way;
  return Math.abs(moved) > MOVED ? measured : measured + moved;
};

/** The gate over a room alone, as calibrations had it that were kept before gates were. */
const gateOver = (noise: number | null): number | null =>
  noise === null ? null : calibrateGate({ room: Array.from({ length: 100 }, () => noise), leak: [] }).gate;

/** Reads a kept calibration. Never throws: without a readable id it is left out, figures out of range are forgotten. */
export const parseCalibration = (
  value: unknown,
): { readonly item: Calibration | null; readonly problems: readonly string[] } => {
  if (!isRecord(value) || typeof value.id !== 'string') {
    return { item: null, problems: ['A kept calibration names no microphone and was left out.'] };
  }
  const problems: string[] = [];
  const figure = (name: keyof typeof BOUNDS): number | null => {
    const given = value[name];
    const [low, high] = BOUNDS[name];
    if (given === null || given === undefined) return null;
    if (typeof given === 'number' && given >= low && given <= high) return given;
    problems.push(`A figure of the kept calibration could not be read and was forgotten (${name}).`);
    return null;
  };
  const seconds = (name: 'roundTrip' | 'way' | 'lag'): Seconds | null => {
    const given = figure(name);
    return given === null ? null : asSeconds(given);
  };
  const noise = figure('noise');
  return {
    item: {
      id: value.id.slice(0, 200),
      name: typeof value.name === 'string' ? value.name.slice(0, 200) : '',
      noise,
      roundTrip: seconds('roundTrip'),
      way: seconds('way'),
      leak: figure('leak'),
      lag: seconds('lag'),
      tapped: value.tapped === true,
      gate: figure('gate') ?? gateOver(noise),
    },
    problems,
  };
};
