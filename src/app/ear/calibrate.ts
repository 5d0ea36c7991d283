import { type Calibration, lagOf, noiseOf, parseCalibration } from '../../core/hearing/calibration';
import type { Microphone, MicStatus } from '../../mic/microphone';
import { openShelf } from '../keeping/shelf';
import type { EarStand } from './ear-state';
import type { Hearing } from './hearing';

/** What the page can ask for about calibration. */
export interface CalibrationCommands {
  /** Measures room, loudspeaker and player in some 11 s, and keeps that for this microphone. */
  calibrate(): Promise<void>;
  /** Breaks off; what was known before stays. */
  cancelCalibration(): void;
  /** Goes back to guesses for this microphone. */
  forgetCalibration(): void;
}

/** Measures a microphone in its room, and remembers what it found for each. */
export interface Calibrator {
  readonly commands: CalibrationCommands;
  /** To be told how the microphone is, so that what is known of it is used. */
  onStatus(status: MicStatus): void;
  dispose(): void;
}

/** Seconds of quiet that are listened to. */
const QUIET = 2;
/** Clicks to play along with: when the first comes, how far apart they are, how many, and how long the last note may take. */
const ALONG = { first: 1, every: 2 / 3, count: 8, after: 0.7 } as const;
const CLICKS: readonly number[] = Array.from(
  { length: ALONG.count },
  (_, i) => ALONG.first + i * ALONG.every,
);
const ALONG_SECONDS = ALONG.first + ALONG.count * ALONG.every + ALONG.after;

interface Parts {
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

const levelsOfRoom = ({ stand, hearing }: Parts): Promise<readonly number[]> =>
  collect<number>(stand, QUIET, (add) =>
    hearing.onHeard(({ frames }) => {
      for (const { level } of frames) add(level);
    }),
  );

const onsetsAlong = ({ stand, hearing }: Parts): Promise<readonly number[]> =>
  collect<number>(stand, ALONG_SECONDS, (add) =>
    hearing.onNote(({ note }) => {
      if (note.to === null && note.joined === 'attack') add(note.from);
    }),
  );

type Step = 'quiet' | 'chirps' | 'along';

/** Goes through the steps; null when it was broken off. */
const measure = async (
  parts: Parts,
  microphone: Microphone,
  enter: (step: Step) => boolean,
): Promise<Omit<Calibration, 'id' | 'name'> | null> => {
  if (!enter('quiet')) return null;
  const noise = noiseOf(await levelsOfRoom(parts));
  if (!enter('chirps')) return null;
  const way = await microphone.measureWay();
  if (!enter('along')) return null;
  const clicks = microphone.click(CLICKS);
  const lag = lagOf(clicks, await onsetsAlong(parts));
  return { noise, roundTrip: way?.seconds ?? null, leak: way?.gain ?? null, lag };
};

/** Leads a player through measuring room, speaker, way and attack, step by step; what was measured goes to `parts`. */
export const createCalibrator = (parts: Parts): Calibrator => {
  const { stand, microphone } = parts;
  const { store, kept, keeper, board, band } = stand;
  let run = 0;
  const set = (change: Partial<ReturnType<typeof store.getState>['ear']>): void =>
    store.setState(({ ear }) => ({ ear: { ...ear, ...change } }));
  const inputNow = () => {
    const { status } = store.getState().ear;
    return status.kind === 'listening' ? status.input : null;
  };
  const show = (): void => {
    const { status } = store.getState().ear;
    const id = 'input' in status ? status.input.id : null;
    set({ calibration: shelf.items().find((each) => each.id === id) ?? null });
  };
  const shelf = openShelf<Calibration>({
    ...{ kept, keeper, name: 'ears', noun: 'calibration', parse: parseCalibration },
    onChange: show,
    onNotice: board.post,
  });
  const cancel = (): void => {
    run += 1;
    if (store.getState().ear.calibrating !== null) set({ calibrating: null });
  };
  const calibrate = async (): Promise<void> => {
    const input = inputNow();
    if (input === null || microphone === undefined) return;
    cancel();
    const mine = run;
    band.stop();
    const measured = await measure(parts, microphone, (step) => {
      if (mine === run) set({ calibrating: step });
      return mine === run;
    });
    if (mine !== run || measured === null) return;
    set({ calibrating: null });
    shelf.put({ id: input.id, name: input.name, ...measured });
  };
  return {
    commands: {
      calibrate,
      cancelCalibration: cancel,
      forgetCalibration: () => {
        const input = inputNow();
        if (input !== null) shelf.remove(input.id);
      },
    },
    onStatus: ({ kind }) => {
      if (kind !== 'listening') cancel();
      show();
    },
    dispose: () => {
      run += 1;
      shelf.dispose();
    },
  };
};
