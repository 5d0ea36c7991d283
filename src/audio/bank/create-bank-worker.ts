import type { BankWorker } from './bank';
import { createSturdyWorker } from './sturdy-worker';

/** What can become of a bank's worker. */
export interface WorkerFate {
  /** The worker is gone, and the page computes in its place. */
  readonly onMakeshift: () => void;
  /** The page cannot compute either: no more sounds will come. */
  readonly onLost: (reason: string) => void;
}

/** Starts the worker itself: it says so when it breaks down, and nothing takes its place. */
export const startBankWorker = (): BankWorker =>
  new Worker(new URL('./bank-worker.ts', import.meta.url), { type: 'module' });

/** Starts what computes the band's sounds: a worker, or the page where no worker can be had. */
export const createBankWorker = (fate: WorkerFate): BankWorker =>
  createSturdyWorker({
    ...fate,
    createWorker: startBankWorker,
    loadAnswer: async () => (await import('./answer-request')).answerRequest,
  });
