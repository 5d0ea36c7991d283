/** The steps of a calibration, and what is measured in each. */
import { calibrateGate } from '../../core/hearing/calibrate-gate';
import { type Calibration, lagOf, noiseOf } from '../../core/hearing/calibration';
import { asSeconds, type Seconds } from '../../core/theory/units';
import type { Microphone } from '../../mic/microphone';
import type { CalibrationStep, EarStand } from './ear-state';
import type { Hearing } from './hearing';

/** Seconds of quiet that are listened to. */
const QUIET = 2;
/** The band is let play so long before it is listened to, while the ear learns to take it out, and then so long. */
const BAND = { before: 3, seconds: 3 } as const;
/** Clicks to play along with: when the first comes, how far apart they are, how many, and how long the last note may take. */
const ALONG = { first: 1, every: 2 / 3, count: 8, after: 0.7 } as const;
const CLICKS: readonly number[] = Array.from(
  { length: ALONG.count },
  (_, i) => ALONG.first + i * ALONG.every,
);
const ALONG_SECONDS = ALONG.first + ALONG.count * ALONG.every + ALONG.after;

/** What of the page the measuring needs. */
export interface CalibrationParts {
  readonly stand: EarStand;
  readonly hearing: Hearing;
  readonly microphone: Microphone | undefined;
}

/** Collects what is heard for some seconds. */
const collect = async <Value>(
  { later }: EarStand,
  seconds: number,
  listen: (add: (value: Value) => void) => () => void,
): Promise<readonly Value[]> => {
  const values: Value[] = [];
  const leave = listen((value) => values.push(value));
  await new Promise<void>((resolve) => {
    later(seconds, resolve);
  });
  leave();
  return values;
};

const levelsFor = ({ stand, hearing }: CalibrationParts, seconds: number): Promise<readonly number[]> =>
  collect<number>(stand, seconds, (add) =>
    hearing.onHeard(({ frames }) => {
      for (const { level } of frames) add(level);
    }),
  );

const onsetsAlong = ({ stand, hearing }: CalibrationParts): Promise<readonly number[]> =>
  collect<number>(stand, ALONG_SECONDS, (add) =>
    hearing.onNote(({ note }) => {
      if (note.to === null && note.joined === 'attack') add(note.from);
    }),
  );

/** What is heard of the band alone. */
interface BandAlone {
  readonly leak: readonly number[];
  /** How long it takes to come back, as the ear finds it; null where it does not. */
  readonly way: Seconds | null;
}

/** Lets the band play while the player is silent, and hears what is left of it once it is taken out. */
const hearBand = async (parts: CalibrationParts, goesOn: () => boolean): Promise<BandAlone> => {
  const { stand } = parts;
  await stand.orders.play(stand.store.getState().cursor);
  if (!goesOn()) {
    stand.band.stop();
    return { leak: [], way: null };
  }
  await collect<never>(stand, BAND.before, () => () => undefined);
  let latest: Seconds | null = null;
  const leave = parts.hearing.onHeard(({ way }) => {
    latest = way ?? latest;
  });
  const leak = await levelsFor(parts, BAND.seconds);
  leave();
  stand.band.stop();
  return { leak, way: latest };
};

/** How late the player is: by notes where they were played, else by taps, to which the way in is added. */
const lagAlong = (
  clicks: readonly number[],
  heard: readonly number[],
  taps: readonly number[],
  wayIn: number,
): Pick<Calibration, 'lag' | 'tapped'> => {
  const lag = lagOf(clicks, heard);
  if (lag !== null) return { lag, tapped: false };
  const tapped = lagOf(clicks, taps);
  return tapped === null ? { lag: null, tapped: false } : { lag: asSeconds(tapped + wayIn), tapped: true };
};

/** What the steps are given once the microphone is open. */
export interface Measuring extends CalibrationParts {
  readonly open: Microphone;
  readonly taps: readonly number[];
  /** Seconds from the air to the page. */
  readonly wayIn: number;
}

/** Goes through the steps; null when it was broken off. */
export const measureCalibration = async (
  parts: Measuring,
  enter: (step: CalibrationStep) => boolean,
): Promise<Omit<Calibration, 'id' | 'name'> | null> => {
  const { open, taps, wayIn } = parts;
  if (!enter('quiet')) return null;
  const room = await levelsFor(parts, QUIET);
  if (!enter('chirps')) return null;
  const way = await open.measureWay();
  // With headphones nothing of the band comes back.
  if (way !== null && !enter('band')) return null;
  const alone = way === null ? null : await hearBand(parts, () => enter('band'));
  if (!enter('along')) return null;
  const clicks = open.click(CLICKS);
  const heard = await onsetsAlong(parts);
  return {
    noise: noiseOf(room),
    roundTrip: way?.seconds ?? null,
    way: alone?.way ?? null,
    leak: way?.gain ?? null,
    gate: calibrateGate({ room, leak: alone?.leak ?? [] }).gate,
    ...lagAlong(clicks, heard, taps, wayIn),
  };
};
