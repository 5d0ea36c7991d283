// Finds a WebKit that can be driven (Debian's webkit2gtk-driver) and drives it by the WebDriver standard (W3C). For `npm run soak`.
import { spawn } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Failure, runQuietly } from './run.mjs';

const DRIVER = 'WebKitWebDriver';
const SCREEN = ':97';
const PORT = 4597;
const LIBRARIES = ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/lib64', '/usr/libexec'];

const small = () =>
  LIBRARIES.filter(existsSync)
    .flatMap((folder) =>
      readdirSync(folder)
        .filter((name) => name.startsWith('webkit2gtk-'))
        .map((name) => join(folder, name, 'MiniBrowser')),
    )
    .findLast(existsSync) ?? null;

/** The path of a WebKit browser with its driver and a screen to show it on, or a sentence on what is missing. */
export const findWebKit = async () => {
  for (const program of [DRIVER, 'Xvfb']) {
    if ((await runQuietly('which', [program])).code !== 0)
      return { missing: `There is no ${program} here: on Debian, apt-get install webkit2gtk-driver xvfb.` };
  }
  const browser = small();
  return browser === null ? { missing: 'WebKit’s small browser (MiniBrowser) was not found.' } : { browser };
};

const until = async (look, seconds) => {
  for (const end = performance.now() + seconds * 1000; performance.now() < end; ) {
    const value = await look().catch(() => null);
    if (value) return value;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return null;
};

const ask = async (method, path, body) => {
  const answer = await fetch(`http://127.0.0.1:${PORT}${path}`, {
    method,
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  const { value } = await answer.json();
  if (value?.error) throw new Failure(`WebKit: ${value.error}: ${value.message}`);
  return value;
};

/** Starts WebKit on a screen of its own. Everything started here is ended by `close`. */
export const startWebKit = async (browser) => {
  const env = { ...process.env, DISPLAY: SCREEN, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' };
  const screen = spawn('Xvfb', [SCREEN, '-screen', '0', '1440x900x24', '-nolisten', 'tcp'], {
    stdio: 'ignore',
  });
  const driver = spawn(DRIVER, [`--port=${PORT}`], { env, stdio: 'ignore' });
  const close = async (session) => {
    if (session) await ask('DELETE', session).catch(() => {});
    driver.kill();
    screen.kill();
  };
  if ((await until(() => ask('GET', '/status'), 20)) === null) {
    await close(null);
    throw new Failure('WebKit’s driver did not start.');
  }
  try {
    const options = { binary: browser, args: ['--automation'] };
    const { sessionId, capabilities } = await ask('POST', '/session', {
      capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': options } },
    });
    const session = `/session/${sessionId}`;
    /** Runs the body of a function in the page. */
    const run = (script, ...args) => ask('POST', `${session}/execute/sync`, { script, args });
    return {
      version: capabilities.browserVersion,
      open: (url) => ask('POST', `${session}/url`, { url }),
      run,
      /** Presses what an XPath finds, as a hand does. */
      press: async (xpath) => {
        const found = await ask('POST', `${session}/element`, { using: 'xpath', value: xpath });
        await ask('POST', `${session}/element/${Object.values(found)[0]}/click`, {});
      },
      waitFor: async (what, seconds, script, ...args) => {
        const value = await until(() => run(script, ...args), seconds);
        if (value === null) throw new Failure(`In WebKit ${what} did not come within ${seconds} s.`);
        return value;
      },
      close: () => close(session),
    };
  } catch (error) {
    await close(null);
    throw error;
  }
};
