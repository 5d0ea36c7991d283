// Finds a Firefox to test in. Shared by `npm test` and tests/firefox.
import { existsSync } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';
import { Failure, runQuietly } from './run.mjs';

const NAMES = process.platform === 'win32' ? ['firefox.exe'] : ['firefox-esr', 'firefox'];
const PROGRAM_FOLDERS = [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)']].filter(Boolean);
const USUAL_PATHS = {
  linux: ['/usr/bin/firefox-esr', '/usr/bin/firefox', '/snap/bin/firefox'],
  darwin: ['/Applications/Firefox.app/Contents/MacOS/firefox'],
  win32: PROGRAM_FOLDERS.map((folder) => join(folder, 'Mozilla Firefox', 'firefox.exe')),
};

/** Some systems put a placeholder under the browser's name that only tells how to install it. */
const starts = async (path) =>
  existsSync(path) && (process.platform === 'win32' || (await runQuietly(path, ['--version'])).code === 0);

const onPath = (process.env.PATH ?? '')
  .split(delimiter)
  .filter(isAbsolute)
  .flatMap((folder) => NAMES.map((name) => join(folder, name)));

/** The path of a Firefox that starts, or null; throws when FIREFOX_PATH names none. */
export const findFirefox = async () => {
  const named = process.env.FIREFOX_PATH;
  if (named) {
    if (await starts(named)) return named;
    throw new Failure(`FIREFOX_PATH names no Firefox that starts: ${named}`);
  }
  for (const path of [...onPath, ...(USUAL_PATHS[process.platform] ?? [])])
    if (await starts(path)) return path;
  return null;
};
