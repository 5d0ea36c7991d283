import { existsSync, mkdirSync, mkdtempSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';
import { hashOf } from '../../.dev/build.mjs';
import { serveFolder } from '../../.dev/serve.mjs';
import type { ServedApp } from './serve';

/** What the page is made of. */
const SOURCES = ['src', 'tests/helpers', 'package-lock.json'];

const KEPT = fileURLToPath(new URL('../../node_modules/.band-page/', import.meta.url));

const buildInto = (outDir: string, plugins: readonly Plugin[]): Promise<unknown> =>
  build({
    configFile: false,
    root: fileURLToPath(new URL('./band-page/', import.meta.url)),
    base: './',
    logLevel: 'error',
    plugins: [...plugins],
    worker: { format: 'es', plugins: () => [...plugins] },
    build: { outDir, emptyOutDir: true, target: 'es2022' },
  });

/** Builds the page with the band alone unless it was built of the same sources, and resolves with its folder. */
export const ensureBandPage = async (): Promise<string> => {
  const folder = join(KEPT, hashOf(SOURCES));
  if (existsSync(folder)) return folder;
  rmSync(KEPT, { recursive: true, force: true });
  // Swapped in when it is whole, so that nobody meets half a page.
  const fresh = `${KEPT.slice(0, -1)}-${process.pid}`;
  await buildInto(fresh, []);
  if (existsSync(folder)) rmSync(fresh, { recursive: true, force: true });
  else {
    mkdirSync(KEPT, { recursive: true });
    renameSync(fresh, folder);
  }
  return folder;
};

const serveOwn = async (plugins: readonly Plugin[]): Promise<ServedApp> => {
  const outDir = mkdtempSync(join(tmpdir(), 'band-page-'));
  await buildInto(outDir, plugins);
  const server = await serveFolder(outDir, 0);
  return {
    address: server.address,
    dispose: async () => {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
};

/**
 * Serves the page with the band alone, workers and all as in the real page, under its headers. With plugins it is built
 * anew, without them once for all the files that look at it.
 */
export const serveBandPage = async (plugins: readonly Plugin[] = []): Promise<ServedApp> => {
  if (plugins.length > 0) return serveOwn(plugins);
  const server = await serveFolder(await ensureBandPage(), 0);
  return { address: server.address, dispose: server.close };
};
