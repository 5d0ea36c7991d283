import type { BankWorker } from './bank';

/** Starts a worker that computes the band's sounds. */
export const createBankWorker = (): BankWorker =>
  new Worker(new URL('./bank-worker.ts', import.meta.url), { type: 'module' });
