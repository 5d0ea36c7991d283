import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { bench, describe } from 'vitest';
import { ensureBuilt } from '../../.dev/build.mjs';
import { launchBrowser } from '../helpers/browser';
import { listenIn } from '../helpers/listen-in';
import { type ServedApp, serveApp } from '../helpers/serve';

const assets = join(await ensureBuilt(), 'assets');
const sizes = readdirSync(assets).map((name) => {
  const bytes = readFileSync(join(assets, name));
  return `${name}: ${(bytes.length / 1024).toFixed(1)} kB, ${(gzipSync(bytes).length / 1024).toFixed(1)} kB gzip`;
});
process.stdout.write(`\n${sizes.join('\n')}\n\n`);

let app: ServedApp;
let browser: Browser;
const options = {
  time: 0,
  iterations: 5,
  warmupTime: 0,
  warmupIterations: 0,
  setup: async () => {
    app ??= await serveApp();
    browser = await launchBrowser();
  },
  teardown: async () => {
    await browser.close();
  },
};

describe('the page, from nothing in the cache', () => {
  bench(
    'opened to first contentful paint',
    async () => {
      const page = await browser.newPage();
      await page.goto(app.address, { waitUntil: 'commit' });
      await page.waitForFunction(
        () => performance.getEntriesByName('first-contentful-paint').length > 0,
        undefined,
        {
          polling: 5,
        },
      );
      await page.close();
    },
    options,
  );

  bench(
    'opened, Play pressed, first sound out of the loudspeaker',
    async () => {
      const context = await browser.newContext({ bypassCSP: true });
      const page = await context.newPage();
      await listenIn(page);
      await page.goto(app.address);
      await page.getByRole('button', { name: 'Play' }).click();
      await page.waitForFunction(
        () => {
          const { tappedBlocks } = window as unknown as { tappedBlocks?: readonly [number, Float32Array][] };
          return tappedBlocks?.some(([, block]) => block.some((sample) => Math.abs(sample) > 0.001));
        },
        undefined,
        { polling: 10 },
      );
      await context.close();
    },
    options,
  );
});
