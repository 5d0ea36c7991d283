import { describe, expect, it, vi } from 'vitest';
import { RESTING_SOUND } from '../../../../src/audio/band/resting-sound';
import { createFinishAnswers } from '../../../../src/audio/export/answer-finish';
import { createFinishLine, type FinishWorker } from '../../../../src/audio/export/finish-line';
import type { FinishOrder } from '../../../../src/audio/export/finish-messages';
import { createFinisher, type Finished } from '../../../../src/audio/export/finisher';
import type { MixNote } from '../../../../src/audio/export/note-samples';
import type { PartId } from '../../../../src/core/score/score';
import { heardThroughHalfRate } from '../../../../src/core/signal/half-rate';
import { createRandom } from '../../../../src/core/theory/random';

const noise = (length: number, seed: number, level = 1): Float32Array => {
  const random = createRandom(seed);
  return Float32Array.from({ length }, () => level * (2 * random() - 1));
};

const RATE = 8000;
const OPTIONS = {
  sampleRate: RATE,
  room: { left: noise(50, 1, 0.2), right: noise(50, 2, 0.2) },
  mix: RESTING_SOUND.mix,
  trim: -6,
  ceiling: -1.2,
};

const noteOf = (part: PartId, pitch: number, at: number, changes: Partial<MixNote> = {}): MixNote => ({
  part,
  pitch,
  voice: part === 'drums' ? 'sticks' : 'piano',
  sound: 1,
  rate: 1,
  glide: { ratio: 1, seconds: 0 },
  envelope: { at, level: 0.5, until: at + 0.2, release: 0.05 },
  ...changes,
});

/** All there is to a mix: places, a filter, rounded peaks, a turning speaker, a loop, another pitch, a slide and a cut. */
const NOTES: readonly MixNote[] = [
  noteOf('drums', 36, 0),
  noteOf('chords', 48, 0.01),
  noteOf('second', 64, 0.02, { voice: 'organ', sound: 2 }),
  noteOf('drums', 46, 0.1),
  noteOf('bass', 40, 0.12, { voice: 'upright-bass', rate: 1.3 }),
  noteOf('drums', 42, 0.16),
  noteOf('lead', 70, 0.2, { voice: 'harmonica', glide: { ratio: 0.9, seconds: 0.1 } }),
  noteOf('chords', 48, 0.25),
];
const SOUNDS = [
  { id: 1, sound: { samples: noise(1500, 3, 0.9), loop: null } },
  { id: 2, sound: { samples: noise(900, 4), loop: { from: 100, to: 850 } } },
];
const WHOLE = 4000;

const copied = ({ id, sound }: (typeof SOUNDS)[number]) =>
  [id, { ...sound, samples: sound.samples.slice() }] as const;

/** The file in stretches that end at these frames. */
const finishedIn = (ends: readonly number[]): Float32Array[] => {
  const finisher = createFinisher(OPTIONS);
  for (const each of SOUNDS) finisher.know(...copied(each));
  const stretches = ends.map((end, i) => {
    const from = (ends[i - 1] ?? 0) / RATE;
    const here = NOTES.filter(({ envelope: { at } }) => at >= from && at < end / RATE);
    return finisher.next(here, end - (ends[i - 1] ?? 0));
  });
  return joined([...stretches, finisher.rest()]);
};

const joined = (stretches: readonly Finished[]): Float32Array[] =>
  (['left', 'right'] as const).map((side) =>
    Float32Array.from(stretches.flatMap((stretch) => [...stretch[side]])),
  );

const furthest = (one: readonly Float32Array[], other: readonly Float32Array[]): number =>
  Math.max(
    ...one.flatMap((side, i) => Array.from(side, (value, at) => Math.abs(value - (other[i]?.[at] ?? 9)))),
  );

describe('finishing a file', () => {
  it.each([[[1000, 2500]], [[6, 8, WHOLE - 2]], [[800, 1280, 1998]]])(
    'comes to the same whatever stretches it is made of, cut at %j',
    (cuts) => {
      const wanted = finishedIn([WHOLE]);
      expect(Math.max(...wanted[0])).toBeGreaterThan(0.1);
      expect(furthest(wanted, finishedIn([...cuts, WHOLE]))).toBeLessThan(1e-6);
    },
  );

  it('lets what began before go on, and the room after it, until nothing sounds', () => {
    const { channels } = OPTIONS.mix;
    const mix = { ...OPTIONS.mix, channels: { ...channels, lead: { ...channels.lead, pan: 0 } } };
    const finisher = createFinisher({ ...OPTIONS, mix, trim: 0 });
    // Nothing high enough for half the rate to fold over.
    const struck = Float32Array.from(
      { length: RATE },
      (_, i) => 0.1 * Math.exp(-(((RATE - 25 - i) / 6) ** 2)),
    );
    finisher.know(1, { samples: struck, loop: null });
    const note = noteOf('lead', 60, 0.01, {
      voice: 'harmonica',
      envelope: { at: 0.01, level: 1, until: 2, release: 0.01 },
    });
    const [left, right] = joined([finisher.next([note], 100), finisher.rest()]);
    const at = 0.01 * RATE;
    const heard = heardThroughHalfRate(OPTIONS.room.left);
    // Up to a frame more, as they go in pairs.
    expect(left.length - (at + RATE + heard.length)).toBeOneOf([0, 1]);
    expect(left[at + RATE - 25]).toBeCloseTo(0.1, 2);
    // The lead is sent to the room 14 dB softer than it is.
    const sent = 10 ** (-14 / 20);
    const roomAt = (place: number, room: Float32Array): number =>
      sent * room.reduce((sum, value, i) => sum + value * (struck[place - i] ?? 0), 0);
    for (let i = 1; i < heard.length; i += 7)
      expect(left[at + RATE + i]).toBeCloseTo(roomAt(RATE + i, heard), 5);
    expect(Math.abs(roomAt(RATE + 8, heard))).toBeGreaterThan(1e-3);
    expect(right[at + RATE + 8]).toBeCloseTo(roomAt(RATE + 8, heardThroughHalfRate(OPTIONS.room.right)), 5);
    expect(Math.max(...left.subarray(0, at))).toBeLessThan(1e-6);
  });

  it('refuses an odd number of frames, which the room could not take two by two', () => {
    expect(() => createFinisher(OPTIONS).next([], 101)).toThrow(RangeError);
  });

  it('leaves out notes of sounds that it was never given or has forgotten', () => {
    const finisher = createFinisher(OPTIONS);
    finisher.know(...copied(SOUNDS[0]));
    finisher.forget(1);
    const { left } = finisher.next([noteOf('bass', 40, 0), noteOf('bass', 41, 0, { sound: 7 })], 500);
    expect(Math.max(...left)).toBe(0);
  });
});

describe('the line that finishes a file', () => {
  const workerOf = (behave: (worker: FinishWorker, order: FinishOrder) => void): FinishWorker => {
    const worker: FinishWorker = {
      onmessage: null,
      onerror: null,
      terminate: vi.fn(),
      postMessage: (order, options) => {
        const received = structuredClone(order, options);
        queueMicrotask(() => behave(worker, received));
      },
    };
    return worker;
  };
  const pass = (worker: FinishWorker, answer: ReturnType<typeof createFinishAnswers>, order: FinishOrder) => {
    const data = answer(order);
    if (data !== undefined) worker.onmessage?.(new MessageEvent('message', { data }));
  };
  const breakDown = (worker: FinishWorker) => worker.onerror?.(new Event('error') as ErrorEvent);
  const orderedFrom = async (line: ReturnType<typeof createFinishLine>): Promise<Float32Array[]> => {
    for (const each of SOUNDS) line.know(...copied(each));
    const first = await line.next(NOTES.slice(0, 4), 800 + 80);
    line.know(3, { samples: noise(10, 1), loop: null });
    line.forget(3);
    return joined([first, ...(await Promise.all([line.next(NOTES.slice(4), WHOLE - 880), line.rest()]))]);
  };

  it('gives back what its worker made, in turn', async () => {
    const answer = createFinishAnswers();
    const line = createFinishLine(OPTIONS, () => workerOf((worker, order) => pass(worker, answer, order)));
    expect(furthest(finishedIn([WHOLE]), await orderedFrom(line))).toBeLessThan(1e-6);
  });

  it('hands sounds over instead of copying them once its worker has come up', async () => {
    const answer = createFinishAnswers();
    const line = createFinishLine(OPTIONS, () => workerOf((worker, order) => pass(worker, answer, order)));
    const [first, second] = SOUNDS.map(({ sound }) => ({ ...sound, samples: sound.samples.slice() }));
    line.know(1, first);
    await Promise.resolve();
    line.know(2, second);
    expect([first.samples.length, second.samples.length]).toEqual([SOUNDS[0].sound.samples.length, 0]);
    const whole = await Promise.all([line.next(NOTES, WHOLE), line.rest()]);
    expect(furthest(finishedIn([WHOLE]), joined(whole))).toBeLessThan(1e-6);
  });

  it.each([
    [
      'cannot be started',
      () =>
        createFinishLine(OPTIONS, () => {
          throw new Error('no workers here');
        }),
    ],
    [
      'does not come up',
      () =>
        createFinishLine(OPTIONS, () =>
          workerOf((worker, { kind }) => {
            if (kind === 'stretch') breakDown(worker);
          }),
        ),
    ],
  ])('finishes on the page where a worker %s', async (_, open) => {
    expect(furthest(finishedIn([WHOLE]), await orderedFrom(open()))).toBeLessThan(1e-6);
  });

  it('says so when its worker breaks down in the middle, rather than begin anew', async () => {
    const answer = createFinishAnswers();
    let stretches = 0;
    const line = createFinishLine(OPTIONS, () =>
      workerOf((worker, order) => {
        if (order.kind === 'stretch') stretches += 1;
        if (stretches > 1) breakDown(worker);
        else pass(worker, answer, order);
      }),
    );
    await line.next([], 100);
    await expect(line.next([], 100)).rejects.toThrow('broke down');
    await expect(line.rest()).rejects.toThrow('broke down');
  });
});
