/** MP3 files, which every player plays, by an encoder that is brought along and runs in a worker. */
import { id3Tag } from '../../core/formats/audio-tags';
import { mp3InfoFrame } from '../../core/formats/mp3-info';
import type { CompressedFile, CompressionOrder, Encoding } from './compression';
import { type EncodingWorker, openEncodingLine } from './encoding-line';
import type { Mp3Order } from './mp3-messages';

/** What MP3 files need of the browser; tests hand in their own. */
export interface Mp3Ground {
  readonly canRun: () => boolean;
  readonly createWorker: () => EncodingWorker<Mp3Order>;
}

/** The real browser. */
export const workerGround: Mp3Ground = {
  canRun: () => typeof Worker !== 'undefined' && typeof WebAssembly !== 'undefined',
  createWorker: () => new Worker(new URL('./mp3-worker.ts', import.meta.url), { type: 'module' }),
};

/** A usual rate of transparent music in stereo (common practice, no source). */
export const MP3_ENCODING: Encoding = {
  id: 'mp3',
  name: 'MP3',
  extension: 'mp3',
  mediaType: 'audio/mpeg',
  sampleRate: 48000,
  bitrate: 192_000,
};

/** Begins an MP3 file. Throws the browser's reason where no worker can be had. */
export const openMp3 = (
  { encoding, tags, write, rewriteStart }: CompressionOrder,
  { createWorker }: Mp3Ground,
): CompressedFile => {
  const line = openEncodingLine(createWorker);
  const tag = id3Tag(tags);
  const start = (length: Parameters<typeof mp3InfoFrame>[0]): Uint8Array =>
    Uint8Array.of(...tag, ...mp3InfoFrame(length));
  let samples = 0;
  let bytes = 0;
  /** What was asked for last is written while the next is made ready. */
  let last: Promise<void> = Promise.resolve();
  const follow = async (order: Mp3Order, transfer: Transferable[] = []): Promise<void> => {
    const before = last;
    const answer = line.ask(order, transfer);
    last = before.then(async () => {
      const frames = await answer;
      bytes += frames.length;
      if (frames.length > 0) await write(frames);
    });
    // Each failure is told by the next wait for it, and by no other way.
    for (const each of [answer, last]) each.catch(() => undefined);
    await before;
  };
  const opened = (async () => {
    await write(start(null));
    await line.ask({ kind: 'open', sampleRate: encoding.sampleRate, bitrate: encoding.bitrate });
  })();
  last = opened;
  opened.catch(() => undefined);
  return {
    add: async (left, right) => {
      samples += left.length;
      await opened;
      // A message takes the whole of a buffer along, however little of it is shown.
      const [one, other] = [left.slice(), right.slice()];
      await follow({ kind: 'samples', left: one, right: other }, [one.buffer, other.buffer]);
    },
    end: async () => {
      await opened;
      await follow({ kind: 'end' });
      await last;
      line.close();
      await rewriteStart(start({ bytes, samples }));
    },
    close: line.close,
  };
};
