import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { type BenchOptions, bench, describe } from 'vitest';
import { ensureBuilt } from '../../.dev/build.mjs';
import { benchBrowser, measured } from '../helpers/bench-depth';
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
let giveBack: () => Promise<void>;
const times = { time: 0, iterations: measured(5, 1), warmupTime: 0, warmupIterations: 0 };

/** A browser of its own for each benchmark. The warm-up is none here, but asks to be made ready for all the same. */
const inBrowser = (makeReady: () => Promise<void> = async () => {}): BenchOptions => ({
  ...times,
  setup: async (_, mode) => {
    if (mode === 'warmup') return;
    app ??= await serveApp();
    ({ browser, giveBack } = await benchBrowser());
    await makeReady();
  },
  teardown: async (_, mode) => {
    if (mode !== 'warmup') await giveBack();
  },
});

const openTapped = async (): Promise<Page> => {
  const context = await browser.newContext({ bypassCSP: true });
  const page = await context.newPage();
  await listenIn(page);
  await page.goto(app.address);
  return page;
};

const playUntilHeard = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Play' }).click();
  await page.waitForFunction(
    () => {
      const { tappedBlocks } = window as unknown as { tappedBlocks?: readonly [number, Float32Array][] };
      return tappedBlocks?.some(([, block]) => block.some((sample) => Math.abs(sample) > 0.001));
    },
    undefined,
    { polling: 10 },
  );
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
    inBrowser(),
  );

  bench(
    'opened, Play pressed, first sound out of the loudspeaker',
    async () => {
      const page = await openTapped();
      await playUntilHeard(page);
      await page.context().close();
    },
    inBrowser(),
  );
});

describe('the page, open for two seconds', () => {
  const pages: Page[] = [];
  bench(
    'Play pressed, first sound out of the loudspeaker',
    async () => {
      const page = pages.pop();
      if (page === undefined) throw new Error('There are more iterations than pages');
      await playUntilHeard(page);
      await page.context().close();
    },
    inBrowser(async () => {
      // One after the other: a page that opens takes the cores from the sounds another computes.
      for (let i = 0; i < times.iterations; i += 1) {
        const page = await openTapped();
        await page.waitForTimeout(2000);
        pages.push(page);
      }
    }),
  );
});

/** What costs more than a tenth of a second at this speed is felt there. */
describe('the page at a quarter of the speed', () => {
  let page: Page;
  const atQuarterSpeed = inBrowser(async () => {
    page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(app.address, { waitUntil: 'networkidle' });
    const devtools = await page.context().newCDPSession(page);
    await devtools.send('Emulation.setCPUThrottlingRate', { rate: measured(4, 1) });
  });
  const slow = { ...atQuarterSpeed, iterations: measured(10, 1) };

  bench(
    'the song moves to another key, until it is drawn',
    () =>
      page.getByLabel('Song key', { exact: true }).evaluate(async (field: HTMLSelectElement) => {
        field.selectedIndex = (field.selectedIndex + 1) % field.options.length;
        field.dispatchEvent(new Event('change', { bubbles: true }));
        await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
      }),
    slow,
  );

  bench(
    'a panel opens or closes, until it is drawn',
    () =>
      page.getByRole('button', { name: 'Harp', exact: true }).evaluate(async (entry: HTMLElement) => {
        entry.click();
        await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
      }),
    slow,
  );
});
