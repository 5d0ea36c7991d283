import type { TakeDevices } from '../../src/app/takes/takes';
import type { HeardNote } from '../../src/core/hearing/heard-note';
import type { Writing } from '../../src/storage/kept-values';
import type { DecodedSound } from '../../src/tape/tape-machine';
import { createFakeKeptLog, type FakeKeptLog } from './fake-log';
import { createFakeTakeAway } from './fake-take-away';

/** A tape machine that makes no sound: it remembers what it was asked, and hears what it is told to. */
export interface FakeTakes extends TakeDevices {
  readonly files: ReturnType<typeof createFakeTakeAway>['files'];
  readonly kept: FakeKeptLog;
  readonly played: DecodedSound[];
  /** Replaced where the machine cannot be fetched. */
  loadMachine: TakeDevices['loadMachine'];
  /** What a file decodes to; an error is what decoding ends with. */
  decoded: DecodedSound | Error;
  notes: readonly HeardNote[];
  /** Recordings are heard without end while set. */
  endless: boolean;
  /** Answers every writing from now on. */
  refuseWriting(why: Writing): void;
  /** Lets the take that is heard come to its end. */
  endPlaying(): void;
}

/** Devices for takes in memory. */
export const createFakeTakes = (): FakeTakes => {
  const takeAway = createFakeTakeAway();
  const { saver, files } = takeAway;
  let end = (): void => undefined;
  const takes: FakeTakes = {
    saver,
    files,
    kept: createFakeKeptLog(),
    played: [],
    decoded: { samples: new Float32Array(48_000), sampleRate: 48_000 },
    notes: [],
    endless: false,
    endPlaying: () => end(),
    refuseWriting: (why) => {
      takeAway.refuse = why;
    },
    loadMachine: async () => ({
      decode: async () => {
        if (takes.decoded instanceof Error) throw takes.decoded;
        return takes.decoded;
      },
      hear: async (_, { signal, onProgress }) => {
        onProgress(0.5);
        await new Promise<void>((resolve) => {
          signal.addEventListener('abort', () => resolve());
          if (!takes.endless) resolve();
        });
        signal.throwIfAborted();
        return takes.notes;
      },
      play: (sound, _, onEnd) => {
        takes.played.push(sound);
        end = () => {
          end = () => undefined;
          onEnd();
        };
        return () => end();
      },
    }),
  };
  return takes;
};
