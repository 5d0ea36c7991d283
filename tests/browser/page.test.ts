import { describe, expect, it } from 'vitest';
import { builtPage, currentBar, planned, SIZES } from '../helpers/built-page';
import { sizePage } from '../helpers/page-layout';
import { soakIt } from '../helpers/soak';

const { open, browser, address } = builtPage();

describe('a first visit', () => {
  it('plays, takes another form and key, asks the network for nothing more, and keeps the choices over a reload', async () => {
    // Whole, as what is still on its way when the page is loaded again would be reported as failed.
    const { context, page, watch } = await open({ settings: planned({ countInBars: 0 }), whole: true });
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    await expect
      .poll(() => currentBar(page).getAttribute('aria-label'), { timeout: 60_000 })
      .toMatch(/^Bar ([2-9]|1\d), /);
    const loaded = watch.requests.length;
    await page.getByLabel('Form').selectOption('jazz-swing');
    await page.getByRole('button', { name: 'Band', exact: true }).click();
    await page.getByRole('button', { name: 'Mixer', exact: true }).click();
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByLabel('Form').selectOption('standard');
    await page.getByLabel('Song key').selectOption({ label: 'A' });
    await expect
      .poll(() => currentBar(page).getAttribute('aria-label'), { timeout: 60_000 })
      .toMatch(/^Bar \d+, A7$/);
    await expect
      .poll(() => page.locator('.song-line').textContent())
      .toBe('Song in A, D harp, 2nd position (cross)');
    // A bar later the band has taken all of it over.
    const bar = async () =>
      Number(/\d+/.exec((await currentBar(page).getAttribute('aria-label')) ?? '')?.[0] ?? 0);
    const before = await bar();
    await expect.poll(bar, { timeout: 60_000 }).not.toBe(before);
    expect(watch.foreign(address())).toEqual([]);
    expect(watch.requests.slice(loaded)).toEqual([]);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.getByRole('button', { name: 'Play' }).waitFor();
    expect(watch.failures).toEqual([]);
    await page.reload();
    await expect.poll(() => page.getByLabel('Song key').inputValue()).toBe('9');
    expect(watch.errors).toEqual([]);
    await context.close();
  });
});

describe('bad circumstances', () => {
  it('explains a browser without Web Audio and keeps the rest working', async () => {
    const context = await browser().newContext({ viewport: SIZES[0], serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.addInitScript(() => {
      for (const name of ['AudioContext', 'webkitAudioContext', 'OfflineAudioContext'])
        Reflect.deleteProperty(window, name);
    });
    await page.goto(address());
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByText(/cannot make sound/).waitFor();
    await page.getByLabel('Song key').selectOption({ label: 'A' });
    await expect.poll(() => page.locator('.song-line').textContent()).toContain('Song in A');
    await context.close();
  });

  it('starts with storage refused, and says so', async () => {
    const context = await browser().newContext({ viewport: SIZES[0], serviceWorkers: 'block' });
    const page = await context.newPage();
    await page.addInitScript(() => {
      Object.defineProperty(window, 'localStorage', {
        get: () => {
          throw new DOMException('denied', 'SecurityError');
        },
      });
    });
    await page.goto(address());
    await page.getByText(/does not let this page keep anything/).waitFor();
    await page.getByRole('listitem', { name: 'Bar 1, G7' }).waitFor();
    await context.close();
  });

  soakIt('survives a window of no size', async () => {
    const { page, watch } = await open();
    await sizePage(page, [1, 1]);
    await sizePage(page, [1440, 900]);
    await expect.poll(() => currentBar(page).getAttribute('aria-label')).toBe('Bar 1, G7');
    expect(watch.errors).toEqual([]);
  });
});
