import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { watchPage } from '../helpers/browser';
import { spare } from '../helpers/built-page';
import { servedBrowser } from '../helpers/served-browser';
import { inSoak } from '../helpers/soak';

const { browser, address } = servedBrowser();

const STORED = '{"version":1,"tempo":77}';

/** A page in whose browser something every drawing needs fails as long as settings are kept. */
const openBroken = async (): Promise<Page> => {
  const context = await browser().newContext({ serviceWorkers: 'block' });
  await spare(context);
  const page = await context.newPage();
  await page.goto(address());
  await page.evaluate((stored) => localStorage.setItem('combshed.settings', stored), STORED);
  await page.addInitScript(() => {
    const real = window.matchMedia.bind(window);
    window.matchMedia = (query) => {
      if (localStorage.getItem('combshed.settings')?.includes('77')) throw new Error('no media');
      return real(query);
    };
  });
  return page;
};

describe('a page that cannot be drawn', () => {
  it('offers fresh settings to the keyboard, opens with them, and keeps the old ones under Care', async () => {
    const page = await openBroken();
    await page.reload();
    await page.getByRole('heading', { name: 'Combshed cannot be shown' }).waitFor();
    await page.getByText('What went wrong: no media').waitFor();
    const fresh = page.getByRole('button', { name: 'Start with fresh settings, the old ones are kept' });
    for (let presses = 0; presses < 5; presses += 1) {
      if (await fresh.evaluate((button) => button === document.activeElement)) break;
      await page.keyboard.press('Tab');
    }
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Play' }).waitFor();
    await page.getByRole('button', { name: 'Help', exact: true }).click();
    await page.getByRole('button', { name: 'Care', exact: true }).click();
    await page.getByRole('button', { name: 'See Settings, copy 1' }).click();
    await expect.poll(() => page.getByLabel('Settings, copy 1', { exact: true }).inputValue()).toBe(STORED);
    await page.context().close();
  });
});

describe('settings that once locked the player out', () => {
  const first = '{"version":1,"intonation":{"cents":{"blow":[],"draw":[]}}}';
  const all = [
    first,
    '{"version":1,"tuning":7,"intonation":{"cents":{"blow":[0,0,0,0,0,0,0,0,0,0,0,0],"draw":[0,0,0,0,0,0,0,0,0,0,0,0]}}}',
    '{"version":1,"tuning":',
  ];
  it.each(inSoak(all, [first]))('open the page: %s', async (stored) => {
    const page = await browser().newPage({ serviceWorkers: 'block' });
    await spare(page);
    const watch = watchPage(page);
    await page.addInitScript((text) => {
      localStorage['combshed.settings'] ??= text;
    }, stored);
    await page.goto(address());
    await page.getByRole('button', { name: 'Play' }).waitFor();
    expect(watch.errors).toEqual([]);
    await page.close();
  });
});
