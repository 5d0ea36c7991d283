/** The bytes of a WAV file's samples, made beside the page: on it they took a sixth of the time a file takes. */
import { createPcmAnswers, type PcmForm, type PcmOrder } from './answer-pcm';
import { type EncodingLine, type EncodingWorker, openEncodingLine } from './encoding-line';

/** Encodes the samples of one file, in order. */
export interface PcmEncoder {
  /** Rejects with a RangeError's message when the sides differ in length. */
  encode(left: Float32Array, right: Float32Array): Promise<Uint8Array>;
  close(): void;
}

const createWorker = (): EncodingWorker<PcmOrder> =>
  new Worker(new URL('./pcm-worker.ts', import.meta.url), { type: 'module' });

const tryLine = (create: () => EncodingWorker<PcmOrder>): EncodingLine<PcmOrder> | null => {
  try {
    return openEncodingLine(create);
  } catch {
    return null;
  }
};

/** Begins a file. Where no worker can be had, or the worker breaks down, the page encodes what is still to come. */
export const openPcm = (form: PcmForm, create = createWorker): PcmEncoder => {
  const line = tryLine(create);
  const answer = createPcmAnswers();
  const encodeHere = (order: PcmOrder): Uint8Array => {
    const answered = answer(order);
    if (answered.kind === 'failed') throw new RangeError(answered.reason);
    return answered.bytes;
  };
  return {
    encode: async (left, right) => {
      const here = { form, left, right };
      if (line === null) return encodeHere(here);
      // A message takes the whole of a buffer along, however little of it is shown.
      const order = { form, left: left.slice(), right: right.slice() };
      try {
        return await line.ask(order, [order.left.buffer, order.right.buffer]);
      } catch {
        return encodeHere(here);
      }
    },
    close: () => line?.close(),
  };
};
