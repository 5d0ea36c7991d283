import type { RecordedDevices } from '../../src/app/soundfont/recorded';
import { createFakeOwnSounds, type FakeOwnSounds } from './fake-own-sounds';

/** Recorded instruments in tests, numbered from 1: the file comes, or not, when the test lets it. */
export interface FakeRecorded extends RecordedDevices {
  /** Opens whatever comes; `answer` is what opening says. */
  readonly opens: FakeOwnSounds;
  come(): void;
  stayAway(): void;
}

/** Instruments that have not come yet. */
export const createFakeRecorded = (): FakeRecorded => {
  const opens = createFakeOwnSounds();
  let [come, stayAway] = [(_: Blob): void => undefined, (_: Error): void => undefined];
  const file = new Promise<Blob>((resolve, reject) => {
    [come, stayAway] = [resolve, reject];
  });
  return {
    opens,
    sounds: opens.sounds,
    fetchFile: () => file,
    come: () => come(new Blob(['instruments'])),
    stayAway: () => stayAway(new Error('no network')),
  };
};
