import { describe, expect, it } from 'vitest';
import { createPcmAnswers, type PcmOrder } from '../../../../src/audio/export/answer-pcm';
import type { EncodingWorker } from '../../../../src/audio/export/encoding-line';
import { openPcm } from '../../../../src/audio/export/pcm-file';
import { encodePcm } from '../../../../src/core/formats/wav';
import { createDraws } from '../../../../src/core/theory/random';

const FORM = { bits: 16, seed: 5 } as const;
const side = (from: number): Float32Array =>
  Float32Array.from({ length: 500 }, (_, i) => 0.5 * Math.sin((from + i) / 9));

/** The worker's own answers, as far as so many orders. */
const workerFor = (orders: number) => {
  const answer = createPcmAnswers();
  let [asked, ended] = [0, false];
  const worker: EncodingWorker<PcmOrder> = {
    onmessage: null,
    onerror: null,
    // What is handed over is gone from whoever sends it.
    postMessage: async (order, options) => {
      asked += 1;
      const taken = structuredClone(order, options);
      await Promise.resolve();
      if (asked <= orders) worker.onmessage?.(new MessageEvent('message', { data: answer(taken) }));
      else worker.onerror?.(Object.assign(new Event('error'), { message: 'killed' }) as ErrorEvent);
    },
    terminate: () => {
      ended = true;
    },
  };
  return { worker, asked: () => asked, ended: () => ended };
};

describe('plain samples', () => {
  it('are the bytes of one piece, however many they are handed over in', async () => {
    const { worker, asked, ended } = workerFor(2);
    const pcm = openPcm(FORM, () => worker);
    const pieces = await Promise.all([pcm.encode(side(0), side(7)), pcm.encode(side(500), side(507))]);
    const join = (from: number) => Float32Array.of(...side(from), ...side(from + 500));
    expect(Buffer.concat(pieces)).toEqual(
      Buffer.from(encodePcm([join(0), join(7)], FORM.bits, createDraws(FORM.seed))),
    );
    expect(asked()).toBe(2);
    pcm.close();
    expect(ended()).toBe(true);
  });

  it('are all encoded where the worker breaks down between two, or none can be had', async () => {
    const { worker } = workerFor(1);
    const broken = openPcm({ bits: 24, seed: 5 }, () => worker);
    const none = openPcm({ bits: 24, seed: 5 }, () => {
      throw new Error('no worker');
    });
    for (const pcm of [broken, none])
      for (const from of [0, 500, 1000])
        expect(await pcm.encode(side(from), side(from))).toEqual(encodePcm([side(from), side(from)], 24));
  });
});
