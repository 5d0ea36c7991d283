import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { fileBrowser } from '../helpers/served-browser';
import { STORAGE_BEHAVIOURS } from '../helpers/storage-contract';

/** Nothing is served there, the test answers itself; a storage of its own for each test. */
const addressOf = (i: number): string => `http://storage-${i}.localhost:9/`;
/** Set last, so that what is heard of it is all there is to hear. */
const LAST = 'the last of all';

const browser = fileBrowser();
let tabs: readonly [Page, Page];
beforeAll(async () => {
  const context = await browser().newContext();
  await context.route('http://*.localhost:9/', (route) =>
    route.fulfill({ contentType: 'text/html', body: '<title>tab</title>' }),
  );
  tabs = [await context.newPage(), await context.newPage()];
});

describe('the storage of a browser', () => {
  it.each(STORAGE_BEHAVIOURS.map((each, i) => ({ ...each, i })))(
    '$does',
    async ({ i, act, expected, heard }) => {
      const [one, other] = tabs;
      for (const tab of tabs) await tab.goto(addressOf(i));
      await other.evaluate(() => {
        const news: [string | null, string | null][] = [];
        Object.assign(window, { news });
        window.addEventListener('storage', ({ key, newValue }) => news.push([key, newValue]));
      });
      expect(await one.evaluate(`(${act.toString()})(localStorage)`)).toEqual(expected);
      await one.evaluate((name) => localStorage.setItem(name, ''), LAST);
      const lastHeard = () =>
        other.evaluate(() => (window as unknown as { news: [string | null, unknown][] }).news.at(-1)?.[0]);
      await expect.poll(lastHeard).toBe(LAST);
      const news = await other.evaluate(() => (window as unknown as { news: unknown[] }).news);
      expect(news).toEqual([...heard, [LAST, '']]);
    },
  );
});
