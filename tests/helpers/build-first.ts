import { ensureBuilt } from '../../.dev/build.mjs';

/** Builds the page before any test of a browser project, as files that run side by side would both build it. */
export const setup = async (): Promise<void> => {
  await ensureBuilt();
};
