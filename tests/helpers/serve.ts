import { ensureBuilt } from '../../.dev/build.mjs';
import { serveFolder } from '../../.dev/serve.mjs';

export interface ServedApp {
  /** Where the page is, with a slash at the end. */
  readonly address: string;
  readonly dispose: () => Promise<void>;
}

/** Serves the built page as `npm start` does, on any free port; builds it first where the sources have changed. */
export const serveApp = async (): Promise<ServedApp> => {
  const server = await serveFolder(await ensureBuilt(), 0);
  return { address: server.address, dispose: server.close };
};
