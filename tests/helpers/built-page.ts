import type { Browser, BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import type { Settings } from '../../src/core/settings/settings';
import { launchBrowser, type PageWatch, watchPage } from './browser';
import { listenIn } from './listen-in';
import { type ServedApp, serveApp } from './serve';

/** A desk, a tablet and a phone, in pixels. */
export const SIZES = [
  { width: 1440, height: 900 },
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
] as const;

export interface OpenedApp {
  readonly context: BrowserContext;
  readonly page: Page;
  readonly watch: PageWatch;
}

export interface OpeningOptions {
  readonly settings?: Partial<Settings>;
  readonly size?: { readonly width: number; readonly height: number };
  readonly look?: 'light' | 'dark';
  /** Whether what is sent to the loudspeaker is recorded. */
  readonly tapped?: boolean;
  /** What else the browser is told of the visit. */
  readonly visit?: Pick<BrowserContextOptions, 'reducedMotion' | 'serviceWorkers'>;
  /** When the page counts as open: unless it is said, when nothing is fetched any more. */
  readonly until?: 'load' | 'networkidle';
}

/** The built page in a browser for the tests of one file; call it once, outside of any test. */
export const builtPage = () => {
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
  const open = async ({
    settings = {},
    size = SIZES[0],
    look = 'light',
    tapped = false,
    visit = {},
    until = 'networkidle',
  }: OpeningOptions = {}): Promise<OpenedApp> => {
    const context = await browser.newContext({
      viewport: { width: size.width, height: size.height },
      colorScheme: look,
      bypassCSP: tapped,
      ...visit,
    });
    const page = await context.newPage();
    const watch = watchPage(page);
    await page.addInitScript(
      (stored) => {
        localStorage['combshed.settings'] ??= stored;
      },
      JSON.stringify(storableSettings({ ...DEFAULT_SETTINGS, ...settings })),
    );
    if (tapped) await listenIn(page);
    await page.goto(app.address, { waitUntil: until });
    return { context, page, watch };
  };
  return { open, browser: () => browser, address: () => app.address };
};

/** The bar that is marked as playing. */
export const currentBar = (page: Page): Locator => page.locator('[aria-current="true"]');

/** Settings with another plan. */
export const planned = (change: Partial<Settings['plan']>): Pick<Settings, 'plan'> => ({
  plan: { ...DEFAULT_SETTINGS.plan, ...change },
});
