// Talking to the terminal and running other programs; nothing here needs an installed package.
import { spawn } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** A failure with a sentence for the person at the terminal; it is shown without a stack. */
export class Failure extends Error {}

/** Writes a line to the terminal. */
export const say = (text) => process.stdout.write(`${text}\n`);

/** Runs `main` and ends the process with the code it returns; a Failure is printed as its sentence. */
export const runMain = async (main) => {
  try {
    process.exitCode = (await main()) ?? 0;
  } catch (error) {
    process.stderr.write(`\n${error instanceof Failure ? error.message : (error?.stack ?? error)}\n`);
    process.exitCode = 1;
  }
};

/** Writes a line to the terminal, apart from what the program gives out. */
export const sayAside = (text) => process.stderr.write(`${text}\n`);

/**
 * Runs a program with its output on this terminal, all of it on stderr where `aside`, and waits for it; `onError` is
 * also told its error output.
 * Resolves with the exit code; 127 when the program does not exist.
 */
export const run = (program, args, { env = {}, shell = false, aside = false, onError } = {}) =>
  new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd: ROOT,
      shell,
      stdio: ['ignore', aside ? process.stderr : 'inherit', onError ? 'pipe' : 'inherit'],
      env: { ...process.env, ...env },
    });
    child.stderr?.on('data', (chunk) => {
      process.stderr.write(chunk);
      onError(String(chunk));
    });
    child.on('error', () => resolve(127));
    child.on('close', (code) => resolve(code ?? 1));
  });

/**
 * Runs a program quietly. Resolves with its exit code and what it printed; a run longer than
 * `seconds` is ended and counts as failed.
 */
export const runQuietly = (program, args, seconds = 20) =>
  new Promise((resolve) => {
    const child = spawn(program, args, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    const timer = setTimeout(() => child.kill('SIGKILL'), seconds * 1000);
    const finish = (code) => {
      clearTimeout(timer);
      resolve({ code, output });
    };
    child.stdout.on('data', (chunk) => {
      output += chunk;
    });
    child.stderr.on('data', (chunk) => {
      output += chunk;
    });
    child.on('error', () => finish(127));
    child.on('close', (code) => finish(code ?? 1));
  });

/** Runs a JavaScript command-line tool of an installed package with this same Node. */
export const runTool = (path, args, options) =>
  run(process.execPath, [join(ROOT, 'node_modules', path), ...args], options);
