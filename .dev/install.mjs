// Installs the packages when they are missing or differ from package-lock.json, and otherwise does nothing.
import { createHash } from 'node:crypto';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { leftFilesOut, npmTrouble } from './npm-trouble.mjs';
import { Failure, ROOT, run, say, sayAside } from './run.mjs';

const OLDEST_NODE = 20;
const STAMP = join(ROOT, 'node_modules', '.installed-from');

const RECORD = join(ROOT, 'node_modules', '.package-lock.json');

const readText = (path) => {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
};

/** What must be equal for the installed packages to be the right ones for this machine. */
const wantedStamp = (lock) =>
  createHash('sha256').update(`${process.platform} ${process.arch}\n${lock}`).digest('hex');

const fits = (list, value) =>
  !list ||
  (list.some((entry) => !entry.startsWith('!')) ? list.includes(value) : !list.includes(`!${value}`));

/**
 * npm leaves optional packages out where they do not fit. Which ones it needs here cannot be told for those that
 * name no processor (they may belong to one that was left out) or that name a C library.
 */
const mayBeMissing = (entry) => entry.optional && (entry.libc || !(entry.os || entry.cpu));

/** True when every package that this machine needs is installed in the locked version (npm's own record says so). */
const matchesLock = (lock) => {
  const record = readText(RECORD);
  if (record === null) return false;
  const installed = JSON.parse(record).packages ?? {};
  return Object.entries(JSON.parse(lock).packages)
    .filter(([path, entry]) => path !== '' && !mayBeMissing(entry))
    .filter(([, entry]) => fits(entry.os, process.platform) && fits(entry.cpu, process.arch))
    .every(([path, entry]) => installed[path]?.version === entry.version);
};

/** Throws Failure when this Node is too old to run the project. */
export const checkNode = () => {
  const major = Number(process.versions.node.split('.')[0]);
  if (major >= OLDEST_NODE) return;
  throw new Failure(
    `This needs Node.js ${OLDEST_NODE} or newer; ${process.execPath} is ${process.version}.\n` +
      'Install a current version from nodejs.org or your package manager, then run the command again.',
  );
};

/** Runs the npm that started us, or the one on the path. */
const npm = (args, options) => {
  const script = process.env.npm_execpath;
  return script?.endsWith('.js')
    ? run(process.execPath, [script, ...args], options)
    : run('npm', args, { shell: process.platform === 'win32', ...options });
};

const install = async (aside) => {
  let output = '';
  const onError = (text) => {
    output += text;
  };
  const code = await npm(['ci', '--no-audit', '--no-fund'], { aside, onError });
  if (code === 0 && !leftFilesOut(output)) return;
  // npm's record of what is installed would be believed next time.
  rmSync(RECORD, { force: true });
  throw new Failure(`The packages could not be installed.\n${npmTrouble(output, ROOT)}`);
};

/**
 * Makes node_modules agree with package-lock.json; with `aside`, what is said about it goes to stderr.
 * Throws Failure with a sentence when that cannot be done.
 */
export const ensureInstalled = async ({ aside = false } = {}) => {
  checkNode();
  const lock = readText(join(ROOT, 'package-lock.json'));
  if (lock === null)
    throw new Failure('package-lock.json is missing: this copy of the project is incomplete.');
  const stamp = wantedStamp(lock);
  if (readText(STAMP) === stamp) return;
  if (!matchesLock(lock)) {
    (aside ? sayAside : say)('Installing packages (only needed when they change) …');
    await install(aside);
  }
  writeFileSync(STAMP, stamp);
};
