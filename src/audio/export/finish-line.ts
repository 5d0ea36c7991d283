/** Finishing away from the page, or on it where no worker comes up. */
import { createFinishAnswers } from './answer-finish';
import type { Finished, FinishOrder } from './finish-messages';
import type { FinisherOptions, RenderedPiece } from './finisher';

/** The part of a worker that finishing uses. */
export interface FinishWorker {
  postMessage(order: FinishOrder): void;
  onmessage: ((message: MessageEvent<Finished>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Takes rendered pieces in their order and gives each back finished. Rejects when the worker breaks down midway. */
export interface FinishLine {
  add(piece: RenderedPiece): Promise<Finished>;
  rest(): Promise<Finished>;
  close(): void;
}

interface Waiting {
  readonly order: FinishOrder;
  readonly resolve: (finished: Finished) => void;
  readonly reject: (reason: Error) => void;
}

const startFinishWorker = (): FinishWorker =>
  new Worker(new URL('./finish-worker.ts', import.meta.url), { type: 'module' });

/** A worker that none can be had of: some browsers throw at once where others tell later. */
const started = (createWorker: () => FinishWorker): FinishWorker | null => {
  try {
    return createWorker();
  } catch {
    return null;
  }
};

/** Opens a line for one file. */
export const createFinishLine = (
  options: FinisherOptions,
  createWorker: () => FinishWorker = startFinishWorker,
): FinishLine => {
  const opening: FinishOrder = { kind: 'open', options };
  const waiting: Waiting[] = [];
  let worker = started(createWorker);
  let answered = false;
  let onPage: ReturnType<typeof createFinishAnswers> | null = null;

  const answerOnPage = ({ order, resolve, reject }: Waiting): void => {
    if (onPage === null) {
      onPage = createFinishAnswers();
      onPage(opening);
    }
    const finished = onPage(order);
    if (finished === null) reject(new Error('there was nothing to finish'));
    else resolve(finished);
  };
  const breakDown = (): void => {
    worker?.terminate();
    worker = null;
    for (const each of waiting.splice(0)) {
      // What the worker had heard so far is lost with it: a limiter begun anew would be heard in the middle.
      if (answered) each.reject(new Error('what finishes the file broke down'));
      else answerOnPage(each);
    }
  };
  const ask = (order: FinishOrder): Promise<Finished> =>
    new Promise((resolve, reject) => {
      const each = { order, resolve, reject };
      if (worker === null) {
        if (answered) reject(new Error('what finishes the file broke down'));
        else answerOnPage(each);
        return;
      }
      waiting.push(each);
      worker.postMessage(order);
    });

  if (worker !== null) {
    worker.onerror = breakDown;
    worker.onmessage = ({ data }) => {
      answered = true;
      waiting.shift()?.resolve(data);
    };
    worker.postMessage(opening);
  }
  return {
    add: (piece) => ask({ kind: 'piece', piece }),
    rest: () => ask({ kind: 'rest' }),
    close: () => {
      worker?.terminate();
      worker = null;
    },
  };
};
