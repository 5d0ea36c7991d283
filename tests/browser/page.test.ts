import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import type { Settings } from '../../src/core/settings/settings';
import { launchBrowser, type PageWatch, watchPage } from '../helpers/browser';
import { attacksOf, listenIn, peakBetween, takeRecording } from '../helpers/listen-in';
import { type ServedApp, serveApp } from '../helpers/serve';

const SIZES = [
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  app = await serveApp();
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await app?.dispose();
});

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly watch: PageWatch;
}

interface Opening {
  readonly settings?: Partial<Settings>;
  readonly size?: (typeof SIZES)[number];
  readonly look?: 'light' | 'dark';
  readonly tapped?: boolean;
}

const open = async ({
  settings = {},
  size = SIZES[0],
  look = 'light',
  tapped = false,
}: Opening = {}): Promise<Opened> => {
  const context = await browser.newContext({ viewport: size, colorScheme: look, bypassCSP: tapped });
  const page = await context.newPage();
  const watch = watchPage(page);
  await page.addInitScript(
    (stored) => {
      localStorage['combshed.settings'] ??= stored;
    },
    JSON.stringify(storableSettings({ ...DEFAULT_SETTINGS, ...settings })),
  );
  if (tapped) await listenIn(page);
  await page.goto(app.address, { waitUntil: 'networkidle' });
  return { context, page, watch };
};

const current = (page: Page) => page.locator('[aria-current="true"]');
const plan = (change: Partial<Settings['plan']>): Pick<Settings, 'plan'> => ({
  plan: { ...DEFAULT_SETTINGS.plan, ...change },
});

describe('a first visit', () => {
  it('plays, moves through the bars, takes another key, stops, and keeps the choices over a reload', async () => {
    const { context, page, watch } = await open({
      settings: plan({ countInBars: 0 }),
    });
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await expect.poll(() => current(page).getAttribute('aria-label'), { timeout: 15_000 }).toBe('Bar 2, C7');
    await page.getByLabel('Song key').selectOption({ label: 'A' });
    await expect.poll(() => current(page).getAttribute('aria-label'), { timeout: 15_000 }).toBe('Bar 3, A7');
    expect(await page.locator('.song-line').textContent()).toBe('Song in A, D harp, 2nd position (cross)');
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Play' }).waitFor();
    await page.reload({ waitUntil: 'networkidle' });
    expect(await page.getByLabel('Song key').inputValue()).toBe('9');
    expect(watch.errors).toEqual([]);
    expect(watch.failures).toEqual([]);
    await context.close();
  });

  it('asks the network for nothing but its own files, and for nothing more once the band is loaded', async () => {
    const { context, page, watch } = await open({ settings: plan({ countInBars: 0 }) });
    await page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => current(page).getAttribute('aria-label'), { timeout: 15_000 }).toBe('Bar 2, C7');
    const loaded = watch.requests.length;
    await page.getByLabel('Form').selectOption('jazz-swing');
    await page.getByRole('button', { name: 'Band', exact: true }).click();
    await page.getByRole('button', { name: 'Mixer', exact: true }).click();
    await page.waitForTimeout(1500);
    expect(watch.foreign(app.address)).toEqual([]);
    expect(watch.requests.slice(loaded)).toEqual([]);
    await context.close();
  });
});

describe('what leaves the loudspeaker', () => {
  it('is in time with the score, and the page with it', async () => {
    const settings = plan({ countInBars: 0, sounding: 'click' });
    const { context, page } = await open({ settings, tapped: true });
    await page.evaluate(() => {
      const seen: [string, number][] = [];
      Object.assign(window, { seen });
      new MutationObserver(() => {
        const label = document.querySelector('[aria-current="true"]')?.getAttribute('aria-label') ?? '';
        if (seen.at(-1)?.[0] !== label) seen.push([label, performance.now()]);
      }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['aria-current'] });
    });
    await page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => current(page).getAttribute('aria-label'), { timeout: 20_000 }).toBe('Bar 4, G7');
    const offset = await page.evaluate(() => {
      const { tappedContext } = window as unknown as { tappedContext: AudioContext };
      const { contextTime, performanceTime } = tappedContext.getOutputTimestamp();
      return (performanceTime ?? 0) / 1000 - (contextTime ?? 0);
    });
    const seen = await page.evaluate(() => (window as unknown as { seen: [string, number][] }).seen);
    const heard = await takeRecording(page);
    await page.getByRole('button', { name: 'Stop' }).click();
    const attacks = attacksOf(heard);
    const beat = 60 / DEFAULT_SETTINGS.tempo;
    const first = attacks[0] ?? 0;
    const errors = attacks.map(
      (at) => Math.abs((at - first) / beat - Math.round((at - first) / beat)) * beat * 1000,
    );
    expect(attacks.length).toBeGreaterThan(10);
    expect(Math.max(...errors)).toBeLessThan(3);
    const barTwo = seen.find(([label]) => label.startsWith('Bar 2'))?.[1] ?? 0;
    const heardBarTwo = first + 4 * beat + heard.from / heard.sampleRate + offset;
    expect(Math.abs(barTwo / 1000 - heardBarTwo)).toBeLessThan(0.12);
    await context.close();
  });

  it('goes on without a gap while the page is blocked for a second and while the key changes, and ends at Stop', async () => {
    const { context, page } = await open({ settings: plan({ countInBars: 0 }), tapped: true });
    await page.getByRole('button', { name: 'Play' }).click();
    await expect.poll(() => current(page).getAttribute('aria-label'), { timeout: 20_000 }).toBe('Bar 2, C7');
    await page.evaluate(() => {
      const until = performance.now() + 1000;
      while (performance.now() < until);
    });
    await page.getByLabel('Song key').selectOption({ label: 'E♭' });
    await page.waitForTimeout(2500);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.waitForTimeout(900);
    const heard = await takeRecording(page);
    const end = heard.samples.length / heard.sampleRate;
    const start = attacksOf(heard)[0] ?? 0;
    const beat = 60 / DEFAULT_SETTINGS.tempo;
    for (let at = start; at < end - 1.4 - beat; at += beat) {
      expect(peakBetween(heard, at, at + beat), `beat at ${at.toFixed(2)} s`).toBeGreaterThan(0.01);
    }
    expect(peakBetween(heard, end - 0.2, end)).toBeLessThan(0.003);
    await context.close();
  });
});

describe('everyone can use it', () => {
  it.each(
    SIZES.flatMap((size) => (['light', 'dark'] as const).map((look) => [size.width, look, size] as const)),
  )('axe finds nothing at %i wide, %s', async (_, look, size) => {
    const { context, page } = await open({ size, look });
    expect(
      (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html]),
    ).toEqual([]);
    await page.getByRole('button', { name: 'Keys' }).click();
    await page.getByRole('button', { name: 'Band', exact: true }).click();
    await page.getByRole('button', { name: 'Mixer', exact: true }).click();
    expect(
      (await new AxeBuilder({ page }).analyze()).violations.map(({ id, nodes }) => [id, nodes[0]?.html]),
    ).toEqual([]);
    await context.close();
  });

  it.each(SIZES)('nothing is cut off to the side at $width', async (size) => {
    const { context, page } = await open({ size });
    expect(
      await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
    ).toBeLessThanOrEqual(0);
    await context.close();
  });
});

describe('bad circumstances', () => {
  it('explains a browser without Web Audio and keeps the rest working', async () => {
    const context = await browser.newContext({ viewport: SIZES[0] });
    const page = await context.newPage();
    await page.addInitScript(() => {
      for (const name of ['AudioContext', 'webkitAudioContext', 'OfflineAudioContext'])
        Reflect.deleteProperty(window, name);
    });
    await page.goto(app.address, { waitUntil: 'networkidle' });
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByText(/cannot make sound/).waitFor();
    await page.getByLabel('Song key').selectOption({ label: 'A' });
    expect(await page.locator('.song-line').textContent()).toContain('Song in A');
    await context.close();
  });

  it('starts with storage refused, and says so', async () => {
    const context = await browser.newContext({ viewport: SIZES[0] });
    const page = await context.newPage();
    await page.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    });
    await page.goto(app.address, { waitUntil: 'networkidle' });
    await page.getByText(/does not let this page keep anything/).waitFor();
    await page.getByRole('listitem', { name: 'Bar 1, G7' }).waitFor();
    await context.close();
  });

  it('survives a window of no size', async () => {
    const { context, page, watch } = await open();
    await page.setViewportSize({ width: 1, height: 1 });
    await page.setViewportSize({ width: 1440, height: 900 });
    expect(await current(page).getAttribute('aria-label')).toBe('Bar 1, G7');
    expect(watch.errors).toEqual([]);
    await context.close();
  });
});
