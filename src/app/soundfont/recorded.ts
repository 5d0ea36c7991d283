import type { FileSounds } from '../../audio/soundfont/soundfont-route';
import { audibleSoundOf } from '../../core/song/song-program';
import type { Join } from '../song/feature';
import type { Song } from '../song/song-state';
import type { RecordedState } from './soundfont-state';

/** What fetches and plays the recorded instruments. */
export interface RecordedDevices {
  readonly sounds: FileSounds;
  /** Brings the file of the recorded instruments. Rejects when it cannot be had. */
  readonly fetchFile: () => Promise<Blob>;
}

/** What the page can ask for about the recorded instruments. */
export interface RecordedCommands {
  /** To be called once nothing else is to be fetched. Never rejects: without them the computed voices play. */
  fetchRecorded(): Promise<void>;
  /** To be called before the band begins: from here on it plays them, if they are there. */
  takeUpRecorded(): void;
}

/** The recorded instruments' slice of the state. */
export interface RecordedSlice {
  readonly recorded: RecordedState;
}

/** The recorded instruments: fetched at rest and taken up at a Play, never in mid-song. */
export const joinRecorded: Join<RecordedSlice, RecordedCommands, RecordedDevices | undefined, Song> = (
  { store, band, orders },
  devices,
) => {
  const state = () => store.getState().recorded;
  const change = (recorded: Partial<RecordedState>): void =>
    store.setState({ recorded: { ...state(), ...recorded } });
  const unsubscribe = devices?.sounds.onLost(() => {
    change({ kind: 'missing', opened: null, taken: null });
    band.setSound(audibleSoundOf(store.getState()));
  });
  return {
    commands: {
      fetchRecorded: async () => {
        if (devices === undefined || state().kind !== 'none') return;
        change({ kind: 'coming' });
        const opening = await devices.fetchFile().then(devices.sounds.open, () => null);
        if (opening?.kind !== 'opened') return change({ kind: 'missing' });
        change({ opened: opening.source });
        await orders.prepare();
        if (state().opened !== null) change({ kind: 'there' });
      },
      takeUpRecorded: () => {
        // Before that the first Play would wait for them.
        if (state().kind === 'there') change({ taken: state().opened });
      },
    },
    dispose: () => {
      unsubscribe?.();
      devices?.sounds.close();
    },
  };
};
