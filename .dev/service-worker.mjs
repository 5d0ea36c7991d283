// Writes the service worker into a built folder: the sources in src/offline with the list of every file there.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './run.mjs';

const WORKER = 'service-worker.js';
/** The headers that are kept with the files come from here, so another server makes another version. */
const SERVER = join(ROOT, '.dev', 'serve.mjs');

const namesIn = (folder, below = []) =>
  readdirSync(join(folder, ...below), { withFileTypes: true })
    .filter(({ name }) => !name.startsWith('.'))
    .flatMap((entry) =>
      entry.isDirectory() ? namesIn(folder, [...below, entry.name]) : [[...below, entry.name]],
    );

const digestOf = (...parts) => {
  const hash = createHash('sha256');
  for (const part of parts) hash.update(part);
  return hash.digest('hex');
};

/** Every file of a built folder as `Build` in src/offline/built-files.ts has it; the page itself is the empty path. */
export const listBuild = (folder) => {
  const files = namesIn(folder)
    .map((names) => ({
      path: names.map(encodeURIComponent).join('/'),
      digest: digestOf(readFileSync(join(folder, ...names))),
    }))
    .filter(({ path }) => path !== WORKER)
    .map(({ path, digest }) => ({ path: path === 'index.html' ? '' : path, digest }))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  const version = digestOf(JSON.stringify(files), readFileSync(SERVER)).slice(0, 16);
  return { version, files };
};

/** Builds the worker for what is in the folder, in place of one that is there already. */
export const addServiceWorker = async (folder) => {
  const { build } = await import('vite');
  await build({
    configFile: false,
    root: ROOT,
    publicDir: false,
    logLevel: 'error',
    define: { BUILD: JSON.stringify(listBuild(folder)) },
    build: {
      outDir: folder,
      emptyOutDir: false,
      target: 'es2022',
      rolldownOptions: {
        input: join(ROOT, 'src', 'offline', 'service-worker.ts'),
        output: { format: 'iife', entryFileNames: WORKER },
      },
    },
  });
};
