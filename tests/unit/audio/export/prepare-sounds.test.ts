import { expect, it } from 'vitest';
import type { WorkerRoute } from '../../../../src/audio/bank/bank';
import type { SoundRequest } from '../../../../src/audio/bank/bank-messages';
import { prepareSounds } from '../../../../src/audio/export/prepare-sounds';
import { allSections } from '../../../helpers/all-sections';
import { soundFor } from '../../../helpers/render-here';
import { testProgram } from '../../../helpers/test-charts';

const program = testProgram('shuffle', { plan: { choruses: 2, countInBars: 1, ending: 'stop' } });
const recorded = { source: 4, parts: ['drums', 'bass'] } as const;

/** Renders what comes from the recorded instruments, telling of each, and hands on all else. */
const routeTo =
  (requests: SoundRequest[], onRequest: () => void = () => undefined): WorkerRoute =>
  (inner) => {
    let busy = false;
    const outer: ReturnType<WorkerRoute> = {
      onmessage: null,
      onerror: null,
      terminate: () => inner.terminate(),
      postMessage: (request) => {
        expect(busy).toBe(false);
        busy = true;
        requests.push(request);
        onRequest();
        queueMicrotask(() => {
          busy = false;
          // As where the key cannot be rendered.
          inner.postMessage(request);
        });
      },
    };
    inner.onmessage = (message) => outer.onmessage?.(message);
    return outer;
  };

const prepare = async (onRequest?: () => void, signal?: AbortSignal): Promise<readonly SoundRequest[]> => {
  const requests: SoundRequest[] = [];
  await prepareSounds({
    sections: allSections(program),
    sound: { ...soundFor(program), recorded },
    sampleRate: 44_100,
    route: routeTo(requests, onRequest),
    ...(signal && { signal }),
  });
  return requests;
};

it('asks for each recorded key once, one after another, as far as it is held', async () => {
  const requests = await prepare();
  const names = requests.map(({ key }) => `${key.voice}/${key.midi}`);
  expect(names.length).toBeGreaterThan(10);
  expect(new Set(names).size).toBe(names.length);
  expect(new Set(requests.map(({ key }) => key.source))).toEqual(new Set([recorded.source]));
  expect(new Set(requests.map(({ key }) => key.voice))).toEqual(new Set(['sticks', 'upright-bass']));
  for (const { held, sampleRate } of requests) {
    expect(held).toBeGreaterThan(0);
    expect(sampleRate).toBe(44_100);
  }
});

it('ends with the sound under way when it is aborted', async () => {
  const controller = new AbortController();
  let asked = 0;
  const requests = await prepare(() => {
    asked += 1;
    if (asked === 3) controller.abort();
  }, controller.signal);
  expect(requests).toHaveLength(3);
});
