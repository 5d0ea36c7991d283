import { describe, expect, it, vi } from 'vitest';
import type { BankWorker } from '../../../../src/audio/bank/bank';
import type { SoundAnswer, SoundRequest } from '../../../../src/audio/bank/bank-messages';
import { createForehand } from '../../../../src/audio/bank/forehand';
import type { SoundKey } from '../../../../src/audio/bank/sound-key';
import { asHz, asMidi } from '../../../../src/core/theory/units';

const keyAt = (midi: number): SoundKey => ({
  voice: 'piano',
  midi: asMidi(midi),
  hz: asHz(440 * 2 ** ((midi - 69) / 12)),
  layer: 1,
  stroke: 0,
});
const [LOW, MIDDLE, HIGH] = [keyAt(48), keyAt(60), keyAt(72)] as const;

/** A worker that answers one request each time it is let. */
const heldWorker = () => {
  const asked: SoundRequest[] = [];
  const worker: BankWorker & { readonly terminate: ReturnType<typeof vi.fn<() => void>> } = {
    onmessage: null,
    onerror: null,
    postMessage: (request) => void asked.push(request),
    terminate: vi.fn<() => void>(),
  };
  const answer = (): void => {
    const request = asked.at(-1);
    if (request === undefined) throw new Error('Nothing was asked');
    const data: SoundAnswer = {
      kind: 'sound',
      key: request.key,
      samples: Float32Array.of(request.key.midi, request.sampleRate),
      loop: null,
      release: 0.1,
    };
    worker.onmessage?.(new MessageEvent('message', { data }));
  };
  return { worker, asked, answer, names: () => asked.map(({ key, sampleRate }) => [key.midi, sampleRate]) };
};

const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** What a bank behind the handed-over route hears for its requests. */
const bankOn = (route: (worker: BankWorker) => BankWorker) => {
  const inner = heldWorker();
  const outer = route(inner.worker);
  const heard: SoundAnswer[] = [];
  outer.onmessage = ({ data }) => void heard.push(data);
  return { inner, outer, heard };
};

describe('sounds computed before there is a context', () => {
  it('are computed one at a time, the likelier rate first, and each once', () => {
    const { worker, answer, names } = heldWorker();
    const forehand = createForehand(() => worker);
    forehand.prepare([LOW, HIGH, LOW]);
    expect(names()).toEqual([[48, 48_000]]);
    for (let i = 0; i < 3; i += 1) answer();
    expect(names()).toEqual([
      [48, 48_000],
      [72, 48_000],
      [48, 44_100],
      [72, 44_100],
    ]);
  });

  it('answer a bank at the rate its context turned out to have; the rest goes to its worker', async () => {
    const { worker, answer } = heldWorker();
    const forehand = createForehand(() => worker);
    forehand.prepare([LOW]);
    answer();
    answer();
    const { inner, outer, heard } = bankOn(forehand.handOver(44_100));
    outer.postMessage({ key: LOW, sampleRate: 44_100 });
    outer.postMessage({ key: HIGH, sampleRate: 44_100 });
    expect(heard).toEqual([]);
    await settle();
    expect(heard).toMatchObject([{ kind: 'sound', key: LOW, samples: Float32Array.of(48, 44_100) }]);
    expect(inner.names()).toEqual([[72, 44_100]]);
    inner.answer();
    expect(heard).toHaveLength(2);
  });

  it('are given once: asked for again, the worker computes them', async () => {
    const { worker, answer } = heldWorker();
    const forehand = createForehand(() => worker);
    forehand.prepare([LOW]);
    answer();
    const { inner, outer } = bankOn(forehand.handOver(48_000));
    outer.postMessage({ key: LOW, sampleRate: 48_000 });
    outer.postMessage({ key: LOW, sampleRate: 48_000 });
    await settle();
    expect(inner.names()).toEqual([[48, 48_000]]);
  });

  it('are told to be there when all are, or when nothing more is computed ahead', async () => {
    const { worker, answer } = heldWorker();
    const forehand = createForehand(() => worker);
    const told: string[] = [];
    const tell = (name: string, keys: readonly SoundKey[]) =>
      void forehand.prepare(keys).then(() => told.push(name));
    tell('overtaken', [LOW, HIGH]);
    tell('complete', [LOW]);
    answer();
    await settle();
    expect(told).toEqual(['overtaken']);
    // What was under way is computed once more, then the other rate.
    answer();
    answer();
    await settle();
    expect(told).toEqual(['overtaken', 'complete']);
    tell('nothing left to do', [LOW]);
    tell('ended', [MIDDLE]);
    forehand.handOver(48_000);
    tell('too late', [HIGH]);
    await settle();
    expect(told).toEqual(['overtaken', 'complete', 'nothing left to do', 'ended', 'too late']);
  });

  it('follow another choice: what it does not need is dropped, what is done stays', () => {
    const { worker, answer, names } = heldWorker();
    const forehand = createForehand(() => worker);
    forehand.prepare([LOW, MIDDLE]);
    answer();
    forehand.prepare([LOW, HIGH]);
    answer();
    answer();
    expect(names()).toEqual([
      [48, 48_000],
      [60, 48_000],
      [72, 48_000],
      [48, 44_100],
    ]);
  });

  it('end with the handing over: nothing more is computed ahead', () => {
    const { worker, names } = heldWorker();
    const forehand = createForehand(() => worker);
    forehand.prepare([LOW, HIGH]);
    forehand.handOver(48_000);
    expect(worker.terminate).toHaveBeenCalledTimes(1);
    forehand.prepare([MIDDLE]);
    expect(names()).toEqual([[48, 48_000]]);
  });

  it('are left to the bank’s own worker where theirs breaks down or cannot start', async () => {
    const { worker } = heldWorker();
    const broken = createForehand(() => worker);
    broken.prepare([LOW]);
    worker.onerror?.(new Event('error') as ErrorEvent);
    const unstarted = createForehand(() => {
      throw new Error('no workers here');
    });
    unstarted.prepare([LOW]);
    for (const forehand of [broken, unstarted]) {
      const { inner, outer } = bankOn(forehand.handOver(48_000));
      outer.postMessage({ key: LOW, sampleRate: 48_000 });
      await settle();
      expect(inner.names()).toEqual([[48, 48_000]]);
    }
  });
});
