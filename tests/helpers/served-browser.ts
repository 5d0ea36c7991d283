import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type LaunchOptions, launchBrowser } from './browser';
import { type ServedApp, serveApp } from './serve';

/** The built page served, and a browser to open it in, for the tests of one file; call it outside of any test. */
export const servedBrowser = (launch: LaunchOptions = {}) => {
  let browser: Browser;
  let app: ServedApp;
  beforeAll(async () => {
    app = await serveApp();
    browser = await launchBrowser(launch);
  });
  afterAll(async () => {
    await browser?.close();
    await app?.dispose();
  });
  return { browser: () => browser, address: () => app.address };
};
