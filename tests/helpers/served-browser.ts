import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type LaunchOptions, launchBrowser, lendBrowser } from './browser';
import { lendApp, type ServedApp } from './serve';

/** A browser for the tests of one file, which may leave open what they like; call it once, outside of any test. */
export const fileBrowser = (launch?: LaunchOptions): (() => Browser) => {
  let browser: Browser;
  let done: (() => Promise<void>) | undefined;
  beforeAll(async () => {
    if (launch === undefined) {
      const lent = await lendBrowser();
      browser = lent.browser;
      done = lent.giveBack;
    } else {
      browser = await launchBrowser(launch);
      done = () => browser.close();
    }
  });
  afterAll(() => done?.());
  return () => browser;
};

/** The built page served, and a browser to open it in, for the tests of one file; call it outside of any test. */
export const servedBrowser = (launch?: LaunchOptions) => {
  let app: ServedApp;
  beforeAll(async () => {
    app = await lendApp();
  });
  return { browser: fileBrowser(launch), address: () => app.address };
};
