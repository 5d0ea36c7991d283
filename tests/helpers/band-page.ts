import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';
import { serveFolder } from '../../.dev/serve.mjs';
import type { ServedApp } from './serve';

/** Builds the page with the band alone, workers and all as in the real page, and serves it under its headers. */
export const serveBandPage = async (plugins: readonly Plugin[] = []): Promise<ServedApp> => {
  const outDir = mkdtempSync(join(tmpdir(), 'band-page-'));
  await build({
    configFile: false,
    root: fileURLToPath(new URL('./band-page/', import.meta.url)),
    base: './',
    logLevel: 'error',
    plugins: [...plugins],
    worker: { format: 'es', plugins: () => [...plugins] },
    build: { outDir, emptyOutDir: true, target: 'es2022' },
  });
  const server = await serveFolder(outDir, 0);
  return {
    address: server.address,
    dispose: async () => {
      await server.close();
      rmSync(outDir, { recursive: true, force: true });
    },
  };
};
