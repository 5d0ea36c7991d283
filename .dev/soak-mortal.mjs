// A browser that is ended in the middle of what it does, and begins again with what it had on the disk.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM_FLAGS, ensureChromium } from './chromium.mjs';
import { Failure } from './run.mjs';

const launch = async (profile, flags) => {
  const program = await ensureChromium();
  const sandbox = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const args = [
    ...CHROMIUM_FLAGS,
    ...sandbox,
    ...flags,
    '--headless=new',
    '--remote-debugging-port=0',
    `--user-data-dir=${profile}`,
  ];
  const child = spawn(program, [...args, 'about:blank'], {
    stdio: ['ignore', 'ignore', 'pipe'],
    detached: true,
  });
  const endpoint = await new Promise((resolve, reject) => {
    let output = '';
    child.stderr.on('data', (chunk) => {
      output += chunk;
      const found = /DevTools listening on (ws:\S+)/.exec(output);
      if (found) resolve(found[1]);
    });
    child.once('exit', (code) =>
      reject(new Failure(`The browser ended with ${code}:\n${output.slice(-1000)}`)),
    );
  });
  const browser = await chromium.connectOverCDP(endpoint);
  const gone = new Promise((resolve) => child.once('exit', resolve));
  const kill = async () => {
    // The group of the process started above, which is the browser with its helpers.
    process.kill(-child.pid, 'SIGKILL');
    await gone;
    await browser.close().catch(() => {});
  };
  return { context: browser.contexts()[0], kill };
};

/** Ends a page without a word to it, as a closed one, as a crashed one, or with the whole browser, which begins again. */
export const endOne = async (running, page, kind) => {
  if (kind === 'page') return page.close();
  if (kind === 'crash') return page.goto('chrome://crash').catch(() => {});
  await running.browser.kill();
  running.browser = await launch(running.profile, running.flags);
};

/** Hands in a browser with a disk of its own; both are gone afterwards. @param flags beside the usual ones. */
export const withMortalBrowser = async (act, flags = []) => {
  const profile = mkdtempSync(join(tmpdir(), 'soak-profile-'));
  const running = { profile, flags, browser: await launch(profile, flags) };
  try {
    await act(running);
  } finally {
    await running.browser.kill();
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
};
