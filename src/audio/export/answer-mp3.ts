/** What the worker that encodes MP3 does with each order. */
import { messageOf } from '../../core/theory/thrown';
import type { Encoded } from './encoding-line';
import type { Mp3Order } from './mp3-messages';

/** The encoder: what it gives back is its own memory, and good until it is asked again. */
export interface Mp3Encoder {
  configure(options: { readonly channels: 2; readonly sampleRate: number; readonly bitrate: 192 }): void;
  encode(samples: readonly Float32Array[]): Uint8Array;
  finalize(): Uint8Array;
}

const BITRATE = 192_000;

const carryOut = (encoder: Mp3Encoder, order: Mp3Order): Uint8Array => {
  switch (order.kind) {
    case 'open':
      if (order.bitrate !== BITRATE) throw new RangeError(`no MP3 of ${order.bitrate} bits a second`);
      encoder.configure({ channels: 2, sampleRate: order.sampleRate, bitrate: 192 });
      return new Uint8Array(0);
    case 'samples':
      return encoder.encode([order.left, order.right]);
    case 'end':
      return encoder.finalize();
  }
};

/** Answers orders one after another, the first of which fetches the encoder; none rejects. */
export const createMp3Answers = (
  load: () => Promise<Mp3Encoder>,
): ((order: Mp3Order) => Promise<Encoded>) => {
  let encoder: Promise<Mp3Encoder> | null = null;
  return async (order) => {
    try {
      encoder ??= load();
      return { kind: 'frames', bytes: new Uint8Array(carryOut(await encoder, order)) };
    } catch (error) {
      return { kind: 'failed', reason: messageOf(error) };
    }
  };
};
