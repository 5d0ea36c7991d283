import type { BrowserContext, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import type { Settings } from '../../src/core/settings/settings';
import { leaveOpen, type PageWatch, watchPage } from './browser';
import { listenIn } from './listen-in';
import { sizePage } from './page-layout';
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
  readonly reducedMotion?: 'reduce' | 'no-preference';
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

/**
 * Run in a page before its own scripts: what the first Play begins with is computed when there is something to play on
 * or a file is to be saved, not while the page rests, as most tests do neither.
 */
export const withoutForehand = (): void => {
  const held: (() => void)[] = [];
  let sounds = false;
  window.Worker = new Proxy(Worker, {
    construct: (Made, given: ConstructorParameters<typeof Worker>) => {
      const worker = new Made(...given);
      if (!/bank-worker/.test(String(given[0]))) return worker;
      const send = (orders: readonly unknown[]) =>
        Reflect.apply(Worker.prototype.postMessage, worker, orders);
      const postMessage = (...orders: readonly unknown[]) =>
        sounds ? send(orders) : void held.push(() => send(orders));
      return Object.assign(worker, { postMessage });
    },
  });
  const letGo = (): void => {
    sounds = true;
    for (const go of held.splice(0)) go();
  };
  window.AudioContext = new Proxy(AudioContext, {
    construct: (Made, given: ConstructorParameters<typeof AudioContext>) => {
      letGo();
      return new Made(...given);
    },
  });
  const onPress = ({ target }: MouseEvent): void => {
    if (target instanceof Element && /^Save /.test(target.closest('button')?.textContent ?? '')) letGo();
  };
  window.addEventListener('click', onPress, { capture: true });
};

/** Spares the pages of a context, or one page, what most tests have no need of. */
export const spare = async (pages: BrowserContext | Page): Promise<void> => {
  await pages.addInitScript(withoutInstruments);
  await pages.addInitScript(withoutForehand);
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

/** What an earlier test of the file has left in the browser goes, and what this one starts from comes. */
const keepOnly = async (page: Page, kept: Readonly<Record<string, string>>): Promise<void> =>
  page.evaluate(async (all) => {
    localStorage.clear();
    for (const [name, text] of Object.entries(all)) localStorage[`combshed.${name}`] = text;
    for (const { name } of await indexedDB.databases()) if (name) indexedDB.deleteDatabase(name);
  }, kept);

/** The page that the test before had, maybe one of the file before. */
let last: Page | null = null;

/** The built page in a browser for the tests of one file; call it once, outside of any test. */
export const builtPage = () => {
  const { browser, address } = servedBrowser();
  // What it shows or plays is not to go on beside the next file.
  afterAll(async () => {
    if (last !== null && !last.isClosed()) await last.goto('about:blank');
  });

  const newPage = async (options: BrowserContextOptions): Promise<Page> => {
    const context = await browser().newContext(options);
    context.setDefaultTimeout(60_000);
    return context.newPage();
  };

  const wholePage = async (): Promise<Page> => {
    const page = await newPage({});
    await page.addInitScript(withoutForehand);
    return page;
  };

  const plainPage = async (options: BrowserContextOptions = {}): Promise<Page> => {
    const page = await newPage({ serviceWorkers: 'block', ...options });
    await spare(page);
    return page;
  };

  const tappedPage = async (): Promise<Page> => {
    const page = await plainPage({ bypassCSP: true });
    await listenIn(page);
    return page;
  };

  /**
   * The page of the test before: most of what opening one costs is spent on a new process and on compiling. A file of the page's own address stands in between, so that nothing of the page runs while it is cleared.
   */
  const samePage = async (): Promise<Page> => {
    const page = last === null || last.isClosed() ? await plainPage() : last;
    last = page;
    leaveOpen(page.context());
    page.removeAllListeners();
    await page.mouse.move(0, 0);
    return page;
  };

  /** A page that is tapped or whole has a context of its own, which the test closes; any other stays for the next test. */
  const open = async ({
    settings = {},
    kept = {},
    size = SIZES[0],
    look = 'light',
    tapped = false,
    reducedMotion = 'no-preference',
    whole = false,
  }: OpeningOptions = {}): Promise<OpenedApp> => {
    const stored = JSON.stringify(storableSettings({ ...DEFAULT_SETTINGS, ...settings }));
    const page = await (whole ? wholePage() : tapped ? tappedPage() : samePage());
    await page.goto(`${address()}combshed.webmanifest`);
    await keepOnly(page, { ...kept, settings: stored });
    await sizePage(page, [size.width, size.height]);
    await page.emulateMedia({
      media: null,
      colorScheme: look,
      reducedMotion,
      contrast: null,
      forcedColors: null,
    });
    const watch = watchPage(page);
    if (whole) await fetchedAll(page, address());
    else await page.goto(address());
    await everythingHere(page);
    return { context: page.context(), page, watch };
  };
  return { open, browser, address };
};

/** The bar that is marked as playing. */
export const currentBar = (page: Page): Locator => page.locator('[aria-current="true"]');

/** Settings with another plan. */
export const planned = (change: Partial<Settings['plan']>): Pick<Settings, 'plan'> => ({
  plan: { ...DEFAULT_SETTINGS.plan, ...change },
});
