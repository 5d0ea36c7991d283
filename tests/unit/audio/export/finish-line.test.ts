import { describe, expect, it, vi } from 'vitest';
import { createFinishAnswers } from '../../../../src/audio/export/answer-finish';
import { createFinishLine, type FinishWorker } from '../../../../src/audio/export/finish-line';
import type { FinishOrder } from '../../../../src/audio/export/finish-messages';
import { createFinisher, type RenderedPiece } from '../../../../src/audio/export/finisher';
import { createRandom } from '../../../../src/core/theory/random';

const noise = (length: number, seed: number, level = 1): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length }, () => level * (2 * random() - 1));
};

const OPTIONS = {
  sampleRate: 8000,
  room: { left: noise(50, 1, 0.2), right: noise(50, 2, 0.2) },
  roomGain: 0.5,
  ceiling: -1.2,
};

const LEFT = noise(4000, 3, 0.4);
const RIGHT = noise(4000, 4, 0.4);
const SEND = noise(4000, 5, 0.1);

const pieceOf = (from: number, to: number, tail: number): RenderedPiece => {
  // What rings on after the piece is of the piece alone: here the later half of its level.
  const channel = (whole: Float32Array) => {
    const out = new Float32Array(to - from + tail);
    out.set(whole.subarray(from, to));
    return out;
  };
  return { left: channel(LEFT), right: channel(RIGHT), send: channel(SEND), frames: to - from };
};

const together = (stretches: readonly (readonly [Float32Array, Float32Array])[]): number[][] => [
  stretches.flatMap(([left]) => [...left]),
  stretches.flatMap(([, right]) => [...right]),
];

const furthest = (one: readonly number[][], other: readonly number[][]): number =>
  Math.max(...one.flatMap((side, i) => side.map((value, at) => Math.abs(value - (other[i]?.[at] ?? 9)))));

describe('finishing a file', () => {
  const whole = createFinisher(OPTIONS);
  const wanted = together([whole.add(pieceOf(0, 4000, 0)), whole.rest()]);

  it.each([[[1000, 2500]], [[7, 8, 4000 - 1]], [[40, 80, 1999]]])(
    'comes to the same whatever pieces it is made of, cut at %j',
    (cuts) => {
      const finisher = createFinisher(OPTIONS);
      const edges = [0, ...cuts, 4000];
      const stretches = edges.slice(1).map((to, i) => finisher.add(pieceOf(edges[i], to, 300)));
      const got = together([...stretches, finisher.rest()]);
      expect(got[0].slice(0, wanted[0].length)).toHaveLength(wanted[0].length);
      expect(furthest(wanted, got)).toBeLessThan(1e-6);
    },
  );

  it('lets the tail of a piece ring over the next, and the room after the last', () => {
    const finisher = createFinisher({ ...OPTIONS, roomGain: 1 });
    const silence = new Float32Array(100);
    const tail = new Float32Array(160);
    tail[120] = 0.25;
    const first = finisher.add({ left: tail, right: silence, send: silence, frames: 100 });
    const strike = new Float32Array(100);
    strike[99] = 1;
    const second = finisher.add({
      left: new Float32Array(100),
      right: silence.slice(),
      send: strike,
      frames: 100,
    });
    const [left, right] = together([first, second, finisher.rest()]);
    expect(left[120]).toBeCloseTo(0.25, 6);
    OPTIONS.room.left.forEach((value, i) => {
      expect(left[199 + i]).toBeCloseTo(value, 5);
    });
    OPTIONS.room.right.forEach((value, i) => {
      expect(right[199 + i]).toBeCloseTo(value, 5);
    });
  });
});

describe('the line that finishes a file', () => {
  const workerOf = (behave: (worker: FinishWorker, order: FinishOrder) => void): FinishWorker => {
    const worker: FinishWorker = {
      onmessage: null,
      onerror: null,
      terminate: vi.fn(),
      postMessage: (order) => queueMicrotask(() => behave(worker, order)),
    };
    return worker;
  };
  const pass = (worker: FinishWorker, answer: ReturnType<typeof createFinishAnswers>, order: FinishOrder) => {
    const data = answer(order);
    if (data !== null) worker.onmessage?.(new MessageEvent('message', { data }));
  };
  const breakDown = (worker: FinishWorker) => worker.onerror?.(new Event('error') as ErrorEvent);
  const expected = () => createFinisher(OPTIONS).add(pieceOf(0, 1000, 0));

  it('gives back what its worker made, in turn', async () => {
    const answer = createFinishAnswers();
    const line = createFinishLine(OPTIONS, () => workerOf((worker, order) => pass(worker, answer, order)));
    const [first] = await Promise.all([line.add(pieceOf(0, 1000, 0)), line.rest()]);
    expect([...first.left]).toEqual([...expected()[0]]);
  });

  it.each([
    [
      'cannot be started',
      () =>
        createFinishLine(OPTIONS, () => {
          throw new Error('no workers here');
        }),
    ],
    ['does not come up', () => createFinishLine(OPTIONS, () => workerOf((worker) => breakDown(worker)))],
  ])('finishes on the page where a worker %s', async (_, open) => {
    const line = open();
    const { left } = await line.add(pieceOf(0, 1000, 0));
    expect([...left]).toEqual([...expected()[0]]);
    expect((await line.rest()).left.length).toBeGreaterThan(49);
  });

  it('says so when its worker breaks down in the middle, rather than begin anew', async () => {
    const answer = createFinishAnswers();
    let orders = 0;
    const line = createFinishLine(OPTIONS, () =>
      workerOf((worker, order) => {
        orders += 1;
        if (orders > 2) breakDown(worker);
        else pass(worker, answer, order);
      }),
    );
    await line.add(pieceOf(0, 1000, 0));
    await expect(line.add(pieceOf(1000, 2000, 0))).rejects.toThrow('broke down');
    await expect(line.rest()).rejects.toThrow('broke down');
  });
});
