import type { BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import type { Settings } from '../../src/core/settings/settings';
import { type PageWatch, watchPage } from './browser';
import { listenIn } from './listen-in';
import { servedBrowser } from './served-browser';

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
  /** What the browser has kept besides, by its name behind the program's own. */
  readonly kept?: Readonly<Record<string, string>>;
  readonly size?: { readonly width: number; readonly height: number };
  readonly look?: 'light' | 'dark';
  /** Whether what is sent to the loudspeaker is recorded. */
  readonly tapped?: boolean;
  /** What else the browser is told of the visit. */
  readonly visit?: Pick<BrowserContextOptions, 'reducedMotion'>;
  /**
   * Whether the page fetches the recorded instruments and has itself kept for use without a network, as at home, and
   * counts as open when both are here. Otherwise it is spared them, and counts as open when everything else is here.
   */
  readonly whole?: boolean;
}

/** Run in a page before its own scripts: keeps the recorded instruments away, without a word in the console. */
export const withoutInstruments = (): void => {
  const ask = window.fetch.bind(window);
  window.fetch = (from, ...rest) =>
    /instruments/.test(from instanceof Request ? from.url : String(from))
      ? Promise.reject(new TypeError('kept away'))
      : ask(from, ...rest);
};

/** Waits until everything is fetched that is fetched at rest: the recorded instruments come last. */
const fetchedAll = async (page: Page, address: string): Promise<void> => {
  const instruments = page.waitForEvent('requestfinished', {
    predicate: (request) => /instruments/.test(request.url()),
    timeout: 60_000,
  });
  await page.goto(address);
  await instruments;
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
};

/** Waits until everything is here that the page was not first drawn with, the recorded instruments apart. */
const everythingHere = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => performance.getEntriesByName('whole').length > 0);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
};

/** The built page in a browser for the tests of one file; call it once, outside of any test. */
export const builtPage = () => {
  const { browser, address } = servedBrowser();
  const open = async ({
    settings = {},
    kept = {},
    size = SIZES[0],
    look = 'light',
    tapped = false,
    visit = {},
    whole = false,
  }: OpeningOptions = {}): Promise<OpenedApp> => {
    const context = await browser().newContext({
      viewport: { width: size.width, height: size.height },
      colorScheme: look,
      bypassCSP: tapped,
      serviceWorkers: whole ? 'allow' : 'block',
      ...visit,
    });
    context.setDefaultTimeout(60_000);
    const page = await context.newPage();
    const watch = watchPage(page);
    await page.addInitScript(
      (stored) => {
        for (const [name, text] of Object.entries(stored)) localStorage[`combshed.${name}`] ??= text;
      },
      { ...kept, settings: JSON.stringify(storableSettings({ ...DEFAULT_SETTINGS, ...settings })) },
    );
    if (tapped) await listenIn(page);
    if (whole) await fetchedAll(page, address());
    else {
      await page.addInitScript(withoutInstruments);
      await page.goto(address());
    }
    await everythingHere(page);
    return { context, page, watch };
  };
  return { open, browser, address };
};

/** The bar that is marked as playing. */
export const currentBar = (page: Page): Locator => page.locator('[aria-current="true"]');

/** Settings with another plan. */
export const planned = (change: Partial<Settings['plan']>): Pick<Settings, 'plan'> => ({
  plan: { ...DEFAULT_SETTINGS.plan, ...change },
});
