// Finds a Chromium or Chrome to test in, or installs one. Shared by `npm test` and tests/helpers/browser.ts.
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, isAbsolute, join } from 'node:path';
import { Failure, run, runQuietly, runTool, say } from './run.mjs';

/**
 * What a Chromium is tested with: no calls home, which would show up as requests and as noise, and no real microphone.
 * The autoplay policy stays the browser's own: a page must wait for a gesture here too.
 */
export const CHROMIUM_FLAGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
];

const NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'chrome'];
const PROGRAM_FOLDERS = [
  process.env.PROGRAMFILES,
  process.env['PROGRAMFILES(X86)'],
  process.env.LOCALAPPDATA,
].filter(Boolean);
const USUAL_PATHS = {
  linux: [
    '/usr/bin/chromium',
    '/usr/lib/chromium/chromium',
    '/snap/bin/chromium',
    '/opt/google/chrome/chrome',
  ],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  ],
  win32: PROGRAM_FOLDERS.flatMap((folder) => [
    join(folder, 'Chromium', 'Application', 'chrome.exe'),
    join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
  ]),
};

const isExecutable = (path) => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

/** Some systems put a placeholder under the browser's name that only tells how to install it. */
const starts = async (path) =>
  process.platform === 'win32' || (await runQuietly(path, ['--version'])).code === 0;

const onPath = (name) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .filter(isAbsolute)
    .map((folder) => join(folder, process.platform === 'win32' ? `${name}.exe` : name));

/** Where the browser driver keeps a browser it has downloaded itself. */
const driversOwn = async () => {
  try {
    const { chromium } = await import('playwright-core');
    return [chromium.executablePath()].filter(Boolean);
  } catch {
    return [];
  }
};

/**
 * The path of a Chromium or Chrome that starts: CHROMIUM_PATH, the path, the usual places, then the
 * driver's own download. Resolves with null when there is none; throws Failure when CHROMIUM_PATH names none.
 */
export const findChromium = async () => {
  const wanted = process.env.CHROMIUM_PATH;
  if (wanted) {
    if (isExecutable(wanted) && (await starts(wanted))) return wanted;
    throw new Failure(`CHROMIUM_PATH is ${wanted}, but no browser starts there. Correct it or unset it.`);
  }
  const candidates = [
    ...NAMES.flatMap(onPath),
    ...(USUAL_PATHS[process.platform] ?? []),
    ...(await driversOwn()),
  ];
  for (const path of new Set(candidates)) {
    if (isExecutable(path) && (await starts(path))) return path;
  }
  return null;
};

const isRoot = () => process.getuid?.() === 0;
const hasApt = () => existsSync('/usr/bin/apt-get');

const installWithApt = async () => {
  say('No Chromium found. Installing the Debian package …');
  const env = { DEBIAN_FRONTEND: 'noninteractive' };
  await run('apt-get', ['update', '-qq'], { env });
  await run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { env });
};

const installWithDriver = async () => {
  say('No Chromium found. Letting the browser driver download one …');
  const dependencies = isRoot() && hasApt() ? ['--with-deps'] : [];
  await runTool('playwright-core/cli.js', ['install', ...dependencies, 'chromium']);
};

/** Finds a browser or installs one, and resolves with its path. Throws Failure when neither works. */
export const ensureChromium = async () => {
  const found = await findChromium();
  if (found) return found;
  if (isRoot() && hasApt()) {
    await installWithApt();
    const installed = await findChromium();
    if (installed) return installed;
  }
  await installWithDriver();
  const downloaded = await findChromium();
  if (downloaded) return downloaded;
  throw new Failure(
    'The browser tests need Chromium or Chrome, and none could be found or installed.\n' +
      'Install one (on Debian: apt-get install chromium), or set CHROMIUM_PATH to its program file.',
  );
};
