// Builds dist with Vite when the sources differ from what it was built from.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureInstalled } from './install.mjs';
import { Failure, ROOT, runMain, runTool, say } from './run.mjs';
import { addServiceWorker } from './service-worker.mjs';

/** The folder that is served. */
export const DIST = join(ROOT, 'dist');
const SOURCES = [
  '.dev/instruments-licence.txt',
  '.dev/instruments.mjs',
  '.dev/licences.mjs',
  '.dev/serve.mjs',
  '.dev/service-worker.mjs',
  'index.html',
  'package-lock.json',
  'package.json',
  'public',
  'src',
  'tsconfig.json',
  'vite.config.ts',
];
const STAMP = '.built-from';

const filesOf = (path) => {
  const stats = statSync(join(ROOT, path), { throwIfNoEntry: false });
  if (!stats) return [];
  if (!stats.isDirectory()) return [path];
  return readdirSync(join(ROOT, path))
    .sort()
    .flatMap((name) => filesOf(join(path, name)));
};

/** A name for what files and folders hold, given from the project's folder. */
export const hashOf = (paths) => {
  const hash = createHash('sha256');
  for (const path of paths.flatMap(filesOf)) {
    hash
      .update(`${path}\0`)
      .update(readFileSync(join(ROOT, path)))
      .update('\0');
  }
  return hash.digest('hex');
};

const builtFrom = () => {
  try {
    return readFileSync(join(DIST, STAMP), 'utf8');
  } catch {
    return null;
  }
};

/** Built where no tool looks and then swapped in, so that a server or a test never meets half a page. */
const build = async (stamp) => {
  const fresh = join(ROOT, 'node_modules', `.dist-${process.pid}`);
  const old = `${fresh}-old`;
  try {
    // A test runner sets NODE_ENV to test, which would pack React with its development checks.
    const env = { NODE_ENV: 'production' };
    const code = await runTool('vite/bin/vite.js', ['build', '--outDir', fresh, '--emptyOutDir'], { env });
    if (code !== 0) throw new Failure('The build failed; the reason is above.');
    await addServiceWorker(fresh);
    writeFileSync(join(fresh, STAMP), stamp);
    if (statSync(DIST, { throwIfNoEntry: false })) renameSync(DIST, old);
    renameSync(fresh, DIST);
  } finally {
    rmSync(fresh, { recursive: true, force: true });
    rmSync(old, { recursive: true, force: true });
  }
};

/** Makes dist agree with the sources and resolves with its path. Throws Failure when the build fails. */
export const ensureBuilt = async () => {
  const stamp = hashOf(SOURCES);
  if (builtFrom() !== stamp) {
    say('Building …');
    await build(stamp);
  }
  return DIST;
};

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  await runMain(async () => {
    await ensureInstalled();
    await build(hashOf(SOURCES));
  });
}
