import { ensureBuilt } from '../../.dev/build.mjs';
import { serveFolder } from '../../.dev/serve.mjs';

export interface ServedApp {
  /** Where the page is, with a slash at the end. */
  readonly address: string;
  readonly dispose: () => Promise<void>;
}

/** What serves the built page to the files of this worker process; it ends with the process. */
let shared: Promise<ServedApp> | null = null;

/** The built page where all files of this worker process find it, so that the browser they share knows its scripts. */
export const lendApp = (): Promise<ServedApp> => {
  shared ??= serveApp();
  return shared;
};

/** Serves the built page as `npm start` does, on any free port; builds it first where the sources have changed. */
export const serveApp = async (): Promise<ServedApp> => {
  const server = await serveFolder(await ensureBuilt(), 0);
  return { address: server.address, dispose: server.close };
};
