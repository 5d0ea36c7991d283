/** Sounds computed before there is an audio context, so that the first Play finds them done. */
import type { BankWorker, WorkerRoute } from './bank';
import type { SoundAnswer, SoundRequest } from './bank-messages';
import { nameOfKey, type SoundKey } from './sound-key';

/**
 * The rates an audio context may turn out to have: which one is not known before the first gesture. Nearly every device
 * runs at one of these two, 48 kHz first (common practice, no source); at any other rate Play computes as it always did.
 */
const RATES = [48_000, 44_100] as const;

/** Computes sounds before there is an audio context, at the rates one may have. */
export interface Forehand {
  /**
   * Computes these in place of what was wanted before, in this order, a rate at a time. What is done already stays.
   * Resolves when all are there, or when nothing more is computed ahead.
   */
  prepare(keys: readonly SoundKey[]): Promise<void>;
  /** Ends the computing; what is done for this rate then answers a bank's requests before its worker does. */
  handOver(sampleRate: number): WorkerRoute;
}

type Store = Map<string, SoundAnswer>;

const nameOf = ({ key, sampleRate }: SoundRequest): string => `${nameOfKey(key)} at ${sampleRate}`;

/** Puts answers that are there already before a worker; each is given once, in a task of its own as a worker's are. */
const answeringFrom =
  (store: Store, sampleRate: number): WorkerRoute =>
  (inner) => {
    const outer: BankWorker = {
      onmessage: null,
      onerror: null,
      postMessage: (request) => {
        const name = nameOf(request);
        const data = request.sampleRate === sampleRate ? store.get(name) : undefined;
        if (data === undefined) return inner.postMessage(request);
        store.delete(name);
        queueMicrotask(() => outer.onmessage?.(new MessageEvent('message', { data })));
      },
      terminate: () => inner.terminate(),
    };
    inner.onmessage = (message) => outer.onmessage?.(message);
    inner.onerror = (event) => outer.onerror?.(event);
    return outer;
  };

/** A request for each key at each rate, the likelier rate first, by name. */
const requestsFor = (keys: readonly SoundKey[]): ReadonlyMap<string, SoundRequest> =>
  new Map(
    RATES.flatMap((sampleRate) => keys.map((key) => ({ key, sampleRate }))).map((request) => [
      nameOf(request),
      request,
    ]),
  );

/** @param createWorker starts what computes; when it breaks down nothing is prepared any more, and nothing is said. */
export const createForehand = (createWorker: () => BankWorker): Forehand => {
  const store: Store = new Map();
  let worker: BankWorker | null = null;
  let queue: readonly SoundRequest[] = [];
  let busy = false;
  let ended = false;
  let tellDone = (): void => undefined;
  let done = Promise.resolve();

  const end = (): void => {
    ended = true;
    queue = [];
    worker?.terminate();
    worker = null;
    tellDone();
  };
  const start = (): BankWorker => {
    const started = createWorker();
    started.onerror = end;
    return started;
  };
  const next = (): void => {
    const [request, ...rest] = queue;
    if (!busy && request === undefined) tellDone();
    if (ended || busy || request === undefined) return;
    queue = rest;
    busy = true;
    worker ??= start();
    worker.onmessage = ({ data }) => {
      busy = false;
      if (data.kind === 'sound') store.set(nameOf(request), data);
      next();
    };
    worker.postMessage(request);
  };

  return {
    prepare: (keys) => {
      if (ended) return done;
      const wanted = requestsFor(keys);
      for (const name of store.keys()) if (!wanted.has(name)) store.delete(name);
      queue = [...wanted].filter(([name]) => !store.has(name)).map(([, request]) => request);
      tellDone();
      done = new Promise((resolve) => {
        tellDone = resolve;
      });
      try {
        next();
      } catch {
        end();
      }
      return done;
    },
    handOver: (sampleRate) => {
      end();
      return answeringFrom(store, sampleRate);
    },
  };
};
