import { ensureBuilt } from '../../.dev/build.mjs';
import { ensureBandPage } from './band-page';

/** Builds both pages before any test of a browser project, as files that run side by side would both build them. */
export const setup = async (): Promise<void> => {
  await ensureBuilt();
  await ensureBandPage();
};
