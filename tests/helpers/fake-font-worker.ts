import type { FontWorker } from '../../src/audio/soundfont/create-font-worker';
import type { FontAnswer, FontRequest } from '../../src/audio/soundfont/font-messages';

/** A SoundFont worker that answers when told to. */
export interface FakeFontWorker extends FontWorker {
  readonly asked: FontRequest[];
  readonly ended: () => boolean;
  answer(answer: FontAnswer): void;
  /** Breaks down with a message. */
  break(message: string): void;
}

/** Creates a worker that has been asked nothing yet. */
export const createFakeFontWorker = (): FakeFontWorker => {
  const asked: FontRequest[] = [];
  let ended = false;
  const worker: FakeFontWorker = {
    asked,
    ended: () => ended,
    onmessage: null,
    onerror: null,
    postMessage: (request) => asked.push(request),
    terminate: () => {
      ended = true;
    },
    answer: (answer) => {
      if (!ended) worker.onmessage?.(new MessageEvent('message', { data: answer }));
    },
    break: (message) => worker.onerror?.(Object.assign(new Event('error'), { message }) as ErrorEvent),
  };
  return worker;
};
