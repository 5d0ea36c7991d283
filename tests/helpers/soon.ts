import { vi } from 'vitest';

/** Far longer than anything here takes, so that only what never comes is told from what comes late on a busy machine. */
export const PATIENCE = 20_000;

/** Waits until a check holds; fails with what the check last said. */
export const soon = (check: () => void): Promise<void> => vi.waitFor(check, PATIENCE);
