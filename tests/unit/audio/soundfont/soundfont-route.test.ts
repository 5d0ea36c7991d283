import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { BankWorker } from '../../../../src/audio/bank/bank';
import type { SoundAnswer, SoundRequest } from '../../../../src/audio/bank/bank-messages';
import type { SoundKey } from '../../../../src/audio/bank/sound-key';
import { createFileSounds } from '../../../../src/audio/soundfont/soundfont-route';
import { MOST_SOUND_FONT_BYTES } from '../../../../src/core/formats/sound-font';
import { hzOf } from '../../../../src/core/theory/temperament';
import { asMidi } from '../../../../src/core/theory/units';
import { createFakeFontWorker } from '../../../helpers/fake-font-worker';

const key = (midi: number, source?: number): SoundKey => ({
  voice: 'piano',
  midi: asMidi(midi),
  hz: hzOf(asMidi(midi)),
  layer: 1,
  stroke: 0,
  ...(source === undefined ? {} : { source }),
});
const request = (midi: number, source?: number): SoundRequest => ({
  key: key(midi, source),
  sampleRate: 48000,
});

/** A bank's worker that remembers what reaches it. */
const bankWorker = () => {
  const reached: number[] = [];
  const worker: BankWorker = {
    onmessage: null,
    onerror: null,
    postMessage: ({ key: { midi } }) => reached.push(midi),
    terminate: vi.fn(),
  };
  return { worker, reached };
};

const setUp = () => {
  const workers: ReturnType<typeof createFakeFontWorker>[] = [];
  let sources = -1;
  const own = createFileSounds({
    manner: 'as it is',
    nextSource: () => {
      sources += 1;
      return sources;
    },
    createWorker: () => {
      const worker = createFakeFontWorker();
      workers.push(worker);
      return worker;
    },
  });
  const { worker: inner, reached } = bankWorker();
  const routed = own.route(inner);
  const heard: SoundAnswer[] = [];
  routed.onmessage = ({ data }) => heard.push(data);
  const open = async () => {
    const opening = own.open(new Blob(['bytes']));
    workers.at(-1)?.answer({ kind: 'opened', voices: ['piano'] });
    return opening;
  };
  const sound = (id: number) => ({
    kind: 'sound' as const,
    id,
    sound: { samples: new Float32Array(3), loop: null, release: 0.1 },
  });
  return { own, workers, inner, routed, reached, heard, open, sound };
};

describe('opening a file', () => {
  it('starts a worker of its own only then', async () => {
    const { workers, open } = setUp();
    expect(workers.length).toBe(0);
    expect(await open()).toEqual({ kind: 'opened', source: 0, voices: ['piano'] });
    expect(workers[0]?.asked).toEqual([{ kind: 'open', file: expect.any(Blob), manner: 'as it is' }]);
  });

  it('refuses a file that is too large without reading it', async () => {
    const { own, workers } = setUp();
    const file = new Blob();
    Object.defineProperty(file, 'size', { value: MOST_SOUND_FONT_BYTES + 1 });
    const refused = { kind: 'refused', why: { kind: 'too large', bytes: MOST_SOUND_FONT_BYTES + 1 } };
    expect(await own.open(file)).toEqual(refused);
    expect(workers.length).toBe(0);
  });

  it('tells why a file is refused, ends its worker, and keeps the file in use', async () => {
    const { own, workers, open, routed, heard, sound } = setUp();
    await open();
    const second = own.open(new Blob(['text']));
    workers[1]?.answer({ kind: 'refused', why: { kind: 'other' } });
    expect(await second).toEqual({ kind: 'refused', why: { kind: 'other' } });
    expect([workers[0]?.ended(), workers[1]?.ended()]).toEqual([false, true]);
    routed.postMessage(request(60, 0));
    workers[0]?.answer(sound(0));
    expect(heard).toMatchObject([{ kind: 'sound', key: { midi: 60 } }]);
  });

  it('lets the old file go when the new one is there', async () => {
    const { workers, open } = setUp();
    await open();
    expect(await open()).toMatchObject({ kind: 'opened', source: 1 });
    expect([workers[0]?.ended(), workers[1]?.ended()]).toEqual([true, false]);
  });

  it('tells when the worker does not start', async () => {
    const { own, workers } = setUp();
    const opening = own.open(new Blob(['bytes']));
    workers[0]?.break('no such file');
    expect(await opening).toEqual({ kind: 'refused', why: { kind: 'no player', detail: 'no such file' } });
  });

  it('tells when no worker can be had at all', async () => {
    const own = createFileSounds({
      manner: 'as it is',
      nextSource: () => 0,
      createWorker: () => {
        throw new Error('workers are forbidden');
      },
    });
    expect(await own.open(new Blob(['bytes']))).toEqual({
      kind: 'refused',
      why: { kind: 'no player', detail: 'workers are forbidden' },
    });
  });

  it('uses the last of two files opened at once', async () => {
    const { own, workers } = setUp();
    const openings = [own.open(new Blob(['one'])), own.open(new Blob(['two']))];
    workers[1]?.answer({ kind: 'opened', voices: ['piano'] });
    workers[0]?.answer({ kind: 'opened', voices: ['organ'] });
    expect(await Promise.all(openings)).toMatchObject([
      { kind: 'refused', why: { kind: 'overtaken' } },
      { kind: 'opened', voices: ['piano'] },
    ]);
    expect(workers[0]?.ended()).toBe(true);
  });
});

describe('playing from a file', () => {
  it('sends only what asks for this file to it', async () => {
    const { workers, open, routed, reached } = setUp();
    routed.postMessage(request(50, 0));
    await open();
    routed.postMessage(request(51));
    routed.postMessage(request(52, 0));
    routed.postMessage(request(53, 7));
    expect(reached).toEqual([50, 51, 53]);
    expect(workers[0]?.asked.slice(1)).toEqual([{ kind: 'render', id: 0, ...request(52, 0) }]);
  });

  it('plays the built-in voice where the file has nothing or fails, and counts it', async () => {
    const { own, workers, open, routed, reached, heard, sound } = setUp();
    await open();
    for (const midi of [60, 61, 62]) routed.postMessage(request(midi, 0));
    workers[0]?.answer({ kind: 'none', id: 1 });
    workers[0]?.answer({ kind: 'failed', id: 2, reason: 'broken' });
    workers[0]?.answer(sound(0));
    expect(reached).toEqual([61, 62]);
    expect(heard.map((answer) => answer.key.midi)).toEqual([60]);
    expect(own.counts()).toEqual({ rendered: 1, absent: 1, failed: 1 });
  });

  it('goes on with the built-in voices when the worker breaks down, and says so', async () => {
    const { own, workers, open, routed, reached } = setUp();
    const lost: string[] = [];
    own.onLost((detail) => lost.push(detail));
    await open();
    routed.postMessage(request(60, 0));
    workers[0]?.break('out of memory');
    routed.postMessage(request(61, 0));
    expect(lost).toEqual(['out of memory']);
    expect(reached).toEqual([60, 61]);
  });

  it('passes the other way what the bank’s worker says, and ends with it', async () => {
    const { inner, routed, workers, open, heard, sound } = setUp();
    await open();
    inner.onmessage?.(new MessageEvent('message', { data: { kind: 'failed', key: key(40), reason: '' } }));
    expect(heard).toHaveLength(1);
    routed.postMessage(request(60, 0));
    routed.terminate();
    expect(inner.terminate).toHaveBeenCalled();
    workers[0]?.answer(sound(0));
    expect(heard).toHaveLength(1);
    expect(workers[0]?.ended()).toBe(false);
  });
});

describe('waiting', () => {
  beforeEach(() => void vi.useFakeTimers());
  afterEach(() => void vi.useRealTimers());

  it('ends for a file that is not read within a minute', async () => {
    const { own, workers } = setUp();
    const opening = own.open(new Blob(['bytes']));
    vi.advanceTimersByTime(60_000);
    expect(await opening).toEqual({ kind: 'refused', why: { kind: 'too slow', seconds: 60 } });
    expect(workers[0]?.ended()).toBe(true);
  });

  it('ends for a sound, but not while others keep coming', async () => {
    const { own, workers, open, routed, reached, sound } = setUp();
    const lost = vi.fn();
    own.onLost(lost);
    await open();
    routed.postMessage(request(60, 0));
    vi.advanceTimersByTime(15_000);
    routed.postMessage(request(61, 0));
    workers[0]?.answer(sound(0));
    vi.advanceTimersByTime(15_000);
    expect(lost).not.toHaveBeenCalled();
    vi.advanceTimersByTime(10_000);
    expect(lost).toHaveBeenCalledWith('no answer within 20 s');
    expect(reached).toEqual([61]);
  });
});
