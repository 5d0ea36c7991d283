/** A bank's worker that does not leave the bank without answers: when the worker breaks down, the page takes over. */
import { messageOf } from '../../core/theory/thrown';
import type { BankWorker } from './bank';
import type { SoundAnswer, SoundRequest } from './bank-messages';
import { nameOfKey } from './sound-key';

export interface SturdyOptions {
  readonly createWorker: () => BankWorker;
  /** Loads what answers requests on the page. */
  readonly loadAnswer: () => Promise<(request: SoundRequest) => SoundAnswer>;
  /** Called once when the page takes over. */
  readonly onMakeshift: () => void;
  /** Called once when the page cannot take over. */
  readonly onLost: (reason: string) => void;
}

/** A worker that has not answered its first request after so long, in ms, is taken to be broken. */
const FIRST_ANSWER_MS = 5000;

/** Resolves in a task of its own, so that the page is drawn and heard in between; hidden pages do not slow it down. */
const nextTask = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });

/** Starts a worker; one that does not start is told of as a broken one is, after whoever asked is ready to hear it. */
const start = (createWorker: () => BankWorker, onBroken: () => void): BankWorker => {
  try {
    return createWorker();
  } catch {
    setTimeout(onBroken);
    return { postMessage: () => {}, onmessage: null, onerror: null, terminate: () => {} };
  }
};

/** Starts a worker. What it leaves unanswered when it breaks down is answered by the page, one sound at a time. */
export const createSturdyWorker = (options: SturdyOptions): BankWorker => {
  const { createWorker, loadAnswer, onMakeshift, onLost } = options;
  const unanswered = new Map<string, SoundRequest>();
  let worker: BankWorker | null = null;
  let watch: ReturnType<typeof setTimeout> | undefined;
  let answering = false;
  let ended = false;
  let answer: ((request: SoundRequest) => SoundAnswer) | null = null;

  const deliver = (data: SoundAnswer): void => {
    if (!unanswered.delete(nameOfKey(data.key))) return;
    outer.onmessage?.(new MessageEvent('message', { data }));
  };
  const answerAll = async (): Promise<void> => {
    if (answering) return;
    answering = true;
    for (;;) {
      await nextTask();
      const [request] = unanswered.values();
      if (ended || answer === null || request === undefined) break;
      deliver(answer(request));
    }
    answering = false;
  };
  const takeOver = async (): Promise<void> => {
    if (ended || worker === null) return;
    const broken = worker;
    worker = null;
    clearTimeout(watch);
    broken.terminate();
    answer = await loadAnswer().catch((error) => {
      if (!ended) onLost(messageOf(error));
      return null;
    });
    if (ended || answer === null) return;
    onMakeshift();
    await answerAll();
  };
  const outer: BankWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (request) => {
      unanswered.set(nameOfKey(request.key), request);
      if (answer !== null) void answerAll();
      worker?.postMessage(request);
      if (worker !== null) watch ??= setTimeout(() => void takeOver(), FIRST_ANSWER_MS);
    },
    terminate: () => {
      ended = true;
      clearTimeout(watch);
      worker?.terminate();
    },
  };
  worker = start(createWorker, () => void takeOver());
  worker.onerror = () => void takeOver();
  worker.onmessage = ({ data }) => {
    clearTimeout(watch);
    if (worker !== null) deliver(data);
  };
  return outer;
};
