import { afterEach, describe, expect, it, vi } from 'vitest';
import type { BankWorker } from '../../../../src/audio/bank/bank';
import type { SoundAnswer, SoundRequest } from '../../../../src/audio/bank/bank-messages';
import type { SoundKey } from '../../../../src/audio/bank/sound-key';
import { createSturdyWorker } from '../../../../src/audio/bank/sturdy-worker';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asMidi } from '../../../../src/core/theory/units';

afterEach(() => {
  vi.useRealTimers();
});

const request = (midi: number): SoundRequest => {
  const key: SoundKey = { voice: 'piano', midi: asMidi(midi), hz: hzOf(asMidi(midi)), layer: 1, stroke: 0 };
  return { key, sampleRate: 1000 };
};

const soundFor = ({ key }: SoundRequest): SoundAnswer => ({
  kind: 'sound',
  // A worker's answer is a copy, not the same object.
  key: structuredClone(key),
  samples: new Float32Array(4),
  loop: null,
  release: 0,
});

const rig = ({ start = true, load = async () => soundFor } = {}) => {
  const inner = { postMessage: vi.fn(), onmessage: null, onerror: null, terminate: vi.fn() } as BankWorker;
  const onMakeshift = vi.fn();
  const onLost = vi.fn();
  const answered: number[] = [];
  const worker = createSturdyWorker({
    createWorker: () => {
      if (!start) throw new DOMException('no workers here', 'SecurityError');
      return inner;
    },
    loadAnswer: load,
    onMakeshift,
    onLost,
  });
  worker.onmessage = ({ data }) => answered.push(data.key.midi);
  const ask = (...midis: readonly number[]) => {
    for (const midi of midis) worker.postMessage(request(midi));
  };
  const answer = (midi: number) =>
    inner.onmessage?.(new MessageEvent('message', { data: soundFor(request(midi)) }));
  const breakDown = () => inner.onerror?.({ message: '' } as ErrorEvent);
  return { worker, inner, answered, onMakeshift, onLost, ask, answer, breakDown };
};

describe('the worker behind the bank', () => {
  it('answers while it lives', async () => {
    const { ask, answer, answered, onMakeshift, inner } = rig();
    ask(60, 61);
    answer(60);
    expect(inner.postMessage).toHaveBeenCalledTimes(2);
    expect([answered, onMakeshift.mock.calls.length]).toEqual([[60], 0]);
  });

  it('leaves what it did not answer to the page, each sound once, and what comes later too', async () => {
    const { ask, answer, answered, breakDown, onMakeshift, onLost, inner } = rig();
    ask(60, 61, 62);
    answer(60);
    breakDown();
    breakDown();
    answer(61);
    await expect.poll(() => answered).toEqual([60, 61, 62]);
    ask(63, 64);
    await expect.poll(() => answered).toEqual([60, 61, 62, 63, 64]);
    expect(inner.terminate).toHaveBeenCalledTimes(1);
    expect([onMakeshift, onLost].map((call) => call.mock.calls.length)).toEqual([1, 0]);
  });

  it('is replaced where it may not even be started', async () => {
    const { ask, answered, onMakeshift } = rig({ start: false });
    ask(60);
    await expect.poll(() => answered).toEqual([60]);
    expect(onMakeshift).toHaveBeenCalledTimes(1);
  });

  it('is given up when its first answer does not come, but not when a later one takes its time', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const silent = rig();
    const slow = rig();
    silent.ask(60);
    slow.ask(60, 61);
    slow.answer(60);
    vi.advanceTimersByTime(20_000);
    vi.useRealTimers();
    await expect.poll(() => silent.answered).toEqual([60]);
    expect(slow.onMakeshift).not.toHaveBeenCalled();
    expect(slow.answered).toEqual([60]);
  });

  it('tells the reason when the page cannot take over', async () => {
    const { ask, breakDown, onLost, onMakeshift } = rig({ load: () => Promise.reject(new Error('no file')) });
    ask(60);
    breakDown();
    await expect.poll(() => onLost.mock.calls).toEqual([['no file']]);
    expect(onMakeshift).not.toHaveBeenCalled();
  });

  it('tells nothing once it was ended', async () => {
    const { worker, ask, breakDown, onMakeshift, onLost, answered } = rig();
    ask(60);
    breakDown();
    worker.terminate();
    breakDown();
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect([answered.length, onMakeshift.mock.calls.length, onLost.mock.calls.length]).toEqual([0, 0, 0]);
  });
});
