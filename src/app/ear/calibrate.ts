import { type Calibration, parseCalibration } from '../../core/hearing/calibration';
import type { Microphone, MicStatus } from '../../mic/microphone';
import { openShelf } from '../keeping/shelf';
import { type CalibrationParts, measureCalibration } from './measure-calibration';

/** What the page can ask for about calibration. */
export interface CalibrationCommands {
  /** Measures room, loudspeaker, what is left of the band, and the player, in some 17 s; keeps it for this microphone. */
  calibrate(): Promise<void>;
  /** A tap along with the clicks, so many seconds ago: for those who have no harp in the mouth just then. */
  tapAlong(ago: number): void;
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

/** Seconds from the air to the page where the browser does not tell (common practice, no source). */
const WAY_IN = 0.02;

const inputOf = (status: MicStatus) => (status.kind === 'listening' ? status.input : null);

/** Keeps when the player tapped, on the clock of the sound. */
const createTaps = (microphone: Microphone | undefined) => {
  const taps: number[] = [];
  return {
    taps,
    tap: (ago: number): void => {
      const now = microphone?.now() ?? null;
      if (now !== null) taps.push(now - ago);
    },
  };
};

/** What was measured here holds, whatever a file from another room says of a microphone of that id. */
const asHere = (present: Calibration): Calibration => present;

/** Leads a player through measuring room, speaker, way and attack, step by step; what was measured goes to `parts`. */
export const createCalibrator = (parts: CalibrationParts): Calibrator => {
  const { stand, microphone } = parts;
  const { store, kept, keeper, board, band } = stand;
  let run = 0;
  const { taps, tap } = createTaps(microphone);
  const set = (change: Partial<ReturnType<typeof store.getState>['ear']>): void =>
    store.setState(({ ear }) => ({ ear: { ...ear, ...change } }));
  const inputNow = () => inputOf(store.getState().ear.status);
  const show = (): void => {
    const { status } = store.getState().ear;
    const id = 'input' in status ? status.input.id : null;
    set({ calibration: shelf.items().find((each) => each.id === id) ?? null });
  };
  const shelf = openShelf<Calibration>({
    ...{ kept, keeper, name: 'ears', noun: 'calibration', parse: parseCalibration, join: asHere },
    onChange: show,
    onNotice: board.post,
  });
  const cancel = (): void => {
    run += 1;
    const { calibrating } = store.getState().ear;
    if (calibrating === null) return;
    set({ calibrating: null });
    if (calibrating === 'band') band.stop();
  };
  const calibrate = async (): Promise<void> => {
    const input = inputNow();
    if (input === null || microphone === undefined) return;
    cancel();
    const mine = run;
    band.stop();
    taps.length = 0;
    const wayIn = input.latency ?? WAY_IN;
    const measured = await measureCalibration({ ...parts, open: microphone, taps, wayIn }, (step) => {
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
      tapAlong: (ago) => {
        if (store.getState().ear.calibrating === 'along') tap(ago);
      },
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
