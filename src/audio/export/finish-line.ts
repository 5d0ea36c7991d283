/** Finishing away from the page, or on it where no worker comes up. */
import { createFinishAnswers } from './answer-finish';
import type { FinishOrder } from './finish-messages';
import type { Finished, FinisherOptions } from './finisher';
import type { MixNote, MixSound } from './note-samples';

/** The part of a worker that finishing uses. */
export interface FinishWorker {
  postMessage(order: FinishOrder, options?: { readonly transfer: Transferable[] }): void;
  /** Answers stretches and the rest; null says that it has come up and opened the file. */
  onmessage: ((message: MessageEvent<Finished | null>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  terminate(): void;
}

/** Makes a file from its notes, stretch by stretch. Rejects when the worker breaks down midway. */
export interface FinishLine {
  /** Hands over a sound that notes will name by its number; its samples are no longer the caller's. */
  know(id: number, sound: MixSound): void;
  forget(id: number): void;
  /** The next frames, in which these notes begin. */
  next(notes: readonly MixNote[], frames: number): Promise<Finished>;
  rest(): Promise<Finished>;
  close(): void;
}

/** An order that may have to be given again, and who waits for its answer. */
interface Given {
  readonly order: FinishOrder;
  readonly resolve: (finished: Finished) => void;
  readonly reject: (reason: Error) => void;
}

const BROKEN = 'what finishes the file broke down';
const nobody = (): void => undefined;

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

const answers = ({ kind }: FinishOrder): boolean => kind === 'stretch' || kind === 'rest';

/** Opens a line for one file. */
export const createFinishLine = (
  options: FinisherOptions,
  createWorker: () => FinishWorker = startFinishWorker,
): FinishLine => new WorkerLine(options, started(createWorker));

class WorkerLine implements FinishLine {
  private worker: FinishWorker | null;
  /** Whether the worker has come up; until then everything is kept and copied, to be done on the page instead. */
  private proven = false;
  private given: Given[] = [];
  private onPage: ReturnType<typeof createFinishAnswers> | null = null;

  constructor(options: FinisherOptions, worker: FinishWorker | null) {
    this.worker = worker;
    if (worker === null) this.onPage = createFinishAnswers();
    else {
      worker.onerror = () => this.breakDown();
      worker.onmessage = ({ data }) => this.receive(data);
    }
    this.tell({ kind: 'open', options });
  }

  know(id: number, sound: MixSound): void {
    this.tell({ kind: 'sound', id, sound });
  }

  forget(id: number): void {
    this.tell({ kind: 'forget', id });
  }

  next(notes: readonly MixNote[], frames: number): Promise<Finished> {
    return this.ask({ kind: 'stretch', notes, frames });
  }

  rest(): Promise<Finished> {
    return this.ask({ kind: 'rest' });
  }

  close(): void {
    this.worker?.terminate();
    this.worker = null;
  }

  private tell(order: FinishOrder): void {
    this.give({ order, resolve: nobody, reject: nobody });
  }

  private ask(order: FinishOrder): Promise<Finished> {
    return new Promise((resolve, reject) => this.give({ order, resolve, reject }));
  }

  private give(given: Given): void {
    const { order, reject } = given;
    if (this.onPage !== null) this.doOnPage(given);
    else if (this.worker === null) reject(new Error(BROKEN));
    else {
      if (!this.proven || answers(order)) this.given.push(given);
      const whole = this.proven && order.kind === 'sound' ? order.sound.samples.buffer : null;
      this.worker.postMessage(order, { transfer: whole === null ? [] : [whole] });
    }
  }

  private receive(finished: Finished | null): void {
    this.proven = true;
    // What was only told is done, or will be.
    this.given = this.given.filter(({ order }) => answers(order));
    if (finished !== null) this.given.shift()?.resolve(finished);
  }

  /** What the worker had heard so far is lost with it: a limiter begun anew would be heard in the middle. */
  private breakDown(): void {
    this.close();
    const given = this.given.splice(0);
    if (this.proven) {
      for (const { reject } of given) reject(new Error(BROKEN));
      return;
    }
    this.onPage = createFinishAnswers();
    for (const each of given) this.doOnPage(each);
  }

  private doOnPage({ order, resolve, reject }: Given): void {
    try {
      const finished = this.onPage?.(order);
      if (finished) resolve(finished);
    } catch (error) {
      reject(error instanceof Error ? error : new Error(String(error)));
    }
  }
}
