import { describe, expect, it } from 'vitest';
import { builtPage, SIZES } from '../helpers/built-page';
import { inSoak } from '../helpers/soak';

/** Google's threshold for a good page is 0.1 (web.dev, "Cumulative Layout Shift"); here nothing is to be seen moving. */
const MOST_SHIFT = 0.02;

describe('the first picture of the built page', () => {
  const { browser, address } = builtPage();

  it.each(inSoak(SIZES, SIZES.slice(2)))(
    'stays where it is while the rest arrives, at $width × $height',
    async (size) => {
      const context = await browser().newContext({ viewport: size, serviceWorkers: 'block' });
      const page = await context.newPage();
      await page.addInitScript(() => {
        const moves: number[] = [];
        Object.assign(window, { moves });
        new PerformanceObserver((list) => {
          for (const entry of list.getEntries()) moves.push((entry as unknown as { value: number }).value);
        }).observe({ type: 'layout-shift', buffered: true });
      });
      await page.goto(address());
      await page.waitForFunction(() => performance.getEntriesByName('whole').length > 0);
      const moves = await page.evaluate(() => (window as unknown as { moves: number[] }).moves);
      expect(moves.reduce((sum, each) => sum + each, 0)).toBeLessThan(MOST_SHIFT);
      await context.close();
    },
  );

  it('takes a press of Play before what plays is here', async () => {
    const context = await browser().newContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    let letCome = (): void => {};
    const held = new Promise<void>((resolve) => {
      letCome = resolve;
    });
    await context.route(/assets\/session-/, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(address(), { waitUntil: 'load' });
    const tempo = page.getByRole('textbox', { name: 'Tempo' });
    await page.getByRole('button', { name: 'Faster' }).click();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const before = await tempo.inputValue();
    letCome();
    await page.getByRole('button', { name: 'Stop', exact: true }).waitFor();
    expect(Number(await tempo.inputValue())).toBe(Number(before) + 2);
    await context.close();
  });
});
