import { describe, expect, it, vi } from 'vitest';
import { type BankWorker, createBank } from '../../../../src/audio/bank/bank';
import type { SoundAnswer, SoundRequest } from '../../../../src/audio/bank/bank-messages';
import type { SoundKey } from '../../../../src/audio/bank/sound-key';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asMidi } from '../../../../src/core/theory/units';

const key = (midi: number): SoundKey => ({
  voice: 'piano',
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  layer: 1,
  stroke: 0,
});

/** A bank whose worker answers when told to. */
const slowBank = () => {
  const asked: SoundRequest[] = [];
  const worker: BankWorker = {
    postMessage: (request) => asked.push(request),
    onmessage: null,
    onerror: null,
    terminate: vi.fn(),
  };
  const bank = createBank({
    sampleRate: 1000,
    workers: 1,
    createWorker: () => worker,
    makeBuffer: (samples) => Object.assign(Object.create(null), { length: samples.length }),
  });
  let answered = 0;
  const answer = (make: (request: SoundRequest) => SoundAnswer) => {
    const request = asked[answered];
    answered += 1;
    worker.onmessage?.(new MessageEvent('message', { data: make(request) }));
  };
  return {
    bank,
    worker,
    asked: () => asked.map((request) => request.key.midi),
    deliver: () =>
      answer((request) => ({
        kind: 'sound',
        key: request.key,
        samples: new Float32Array(500),
        loop: { from: 100, to: 400 },
        release: 0.2,
      })),
    break: () => answer((request) => ({ kind: 'failed', key: request.key, reason: 'no such drum' })),
  };
};

describe('bank', () => {
  it('asks for each sound once, in the order of need', () => {
    const { bank, asked, deliver } = slowBank();
    bank.want([60, 62, 60, 64].map(key));
    expect(asked()).toEqual([60, 62]);
    deliver();
    deliver();
    bank.want([60, 64].map(key));
    expect(asked()).toEqual([60, 62, 64]);
  });

  it('changes course for what is needed sooner', () => {
    const { bank, asked, deliver } = slowBank();
    bank.want([60, 61, 62, 63].map(key));
    bank.hurry([key(70)]);
    deliver();
    expect(asked()).toEqual([60, 61, 70]);
    bank.want([key(80)]);
    deliver();
    expect(asked()).toEqual([60, 61, 70, 80]);
  });

  it('tells when all is there', async () => {
    const { bank, deliver } = slowBank();
    bank.want([60, 61].map(key));
    const ready = bank.ready([60, 61].map(key), 5000);
    deliver();
    deliver();
    expect(await ready).toBe(true);
    expect(bank.find(key(60))).toMatchObject({
      exact: true,
      sound: { loop: { from: 0.1, to: 0.4 }, release: 0.2 },
    });
  });

  it('does not wait for ever', async () => {
    const { bank } = slowBank();
    expect(await bank.ready([key(60)], 5)).toBe(false);
  });

  it('goes on without a sound that cannot be made, and counts', async () => {
    const { bank, ...slow } = slowBank();
    bank.want([60, 61].map(key));
    const ready = bank.ready([60, 61].map(key), 5000);
    slow.break();
    slow.deliver();
    expect(await ready).toBe(true);
    expect(bank.find(key(60))).toMatchObject({ exact: false, sound: { key: key(61) } });
    expect(bank.find(key(30))).toBeNull();
    expect(bank.counts()).toMatchObject({ computed: 1, substituted: 1, missing: 1 });
    expect(bank.counts().failed).toEqual([expect.stringContaining('no such drum')]);
  });

  it('ends its workers', () => {
    const { bank, worker } = slowBank();
    bank.dispose();
    expect(worker.terminate).toHaveBeenCalledTimes(1);
  });

  it('gives a worker what it has most of at hand, and never lets one stand idle', () => {
    const asked: number[][] = [];
    const workers: BankWorker[] = [];
    const bank = createBank({
      sampleRate: 1000,
      workers: 2,
      createWorker: () => {
        const mine: number[] = [];
        asked.push(mine);
        const worker: BankWorker = {
          postMessage: (request) => mine.push(request.key.midi),
          onmessage: null,
          onerror: null,
          terminate: () => undefined,
        };
        workers.push(worker);
        return worker;
      },
      makeBuffer: () => null,
    });
    const layers = (midi: number) => [0, 1].map((layer) => ({ ...key(midi), layer }));
    bank.want([...layers(60), ...layers(61), { ...key(62), layer: 0 }, { ...key(64), layer: 0 }]);
    expect(asked).toEqual([
      [60, 60],
      [61, 61],
    ]);
    const data: SoundAnswer = {
      kind: 'sound',
      key: layers(61)[0],
      samples: new Float32Array(5),
      loop: null,
      release: 0,
    };
    workers[1].onmessage?.(new MessageEvent('message', { data }));
    expect(asked[1]).toEqual([61, 61, 62]);
  });
});
