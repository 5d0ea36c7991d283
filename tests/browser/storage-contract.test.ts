import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser } from '../helpers/browser';
import { STORAGE_BEHAVIOURS } from '../helpers/storage-contract';

/** Nothing is served there: the test answers itself. */
const ADDRESS = 'http://localhost:9/';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

const openTab = async (context: BrowserContext): Promise<Page> => {
  const page = await context.newPage();
  await page.route(ADDRESS, (route) =>
    route.fulfill({ contentType: 'text/html', body: '<title>tab</title>' }),
  );
  await page.goto(ADDRESS);
  return page;
};

describe('the storage of a browser', () => {
  it.each(STORAGE_BEHAVIOURS)('$does', async ({ act, expected, heard }) => {
    const context = await browser.newContext();
    const [one, other] = [await openTab(context), await openTab(context)];
    await other.evaluate(() => {
      const news: [string | null, string | null][] = [];
      Object.assign(window, { news });
      window.addEventListener('storage', ({ key, newValue }) => news.push([key, newValue]));
    });
    expect(await one.evaluate(`(${act.toString()})(localStorage)`)).toEqual(expected);
    await expect
      .poll(() => other.evaluate(() => (window as unknown as { news: unknown[] }).news.length))
      .toBe(heard.length);
    const news = await other.evaluate(() => (window as unknown as { news: unknown[] }).news);
    expect(news).toEqual(heard);
    await context.close();
  });
});
