import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../../src/ui/page/entries';
import { axeFinds, turnTo } from '../helpers/axe';
import { builtPage, SIZES } from '../helpers/built-page';
import { openBeside, openEntry } from '../helpers/open-panel';
import { resize } from '../helpers/page-layout';
import { inSoak } from '../helpers/soak';

const { open } = builtPage();

/** Opens whatever is folded, so that nothing is scanned past. */
const unfold = async (page: Page): Promise<void> => {
  const folded = page.locator('details:not([open]) > summary:visible');
  while ((await folded.count()) > 0) await folded.first().click();
};

/** What axe finds in the light look, and what it finds of colours in the dark one. */
const foundInBothLooks = async (page: Page, within?: string): Promise<readonly unknown[]> => {
  const light = await axeFinds(page, { within });
  await turnTo(page, 'dark');
  const dark = await axeFinds(page, { within, coloursOnly: true });
  await turnTo(page, 'light');
  return [...light, ...dark.map((each) => ['dark', each])];
};

describe('axe finds nothing, light or dark', () => {
  it('at rest at any size', async () => {
    const { page } = await open();
    expect(await foundInBothLooks(page)).toEqual([]);
    // What colours decide is the same at every size.
    for (const { width, height } of inSoak(SIZES.slice(1), SIZES.slice(2))) {
      await resize(page, [width, height]);
      expect(await axeFinds(page), `${width} wide`).toEqual([]);
    }
  });

  it('in any panel', async () => {
    const { page } = await open();
    for (const { text, pages } of ENTRIES) {
      await openEntry(page, text);
      for (const [i, { text: name }] of pages.entries()) {
        if (i > 0) await openBeside(page, name);
        await unfold(page);
        // The stand beside it is the one that was scanned at rest.
        expect(await foundInBothLooks(page, '.panel'), name).toEqual([]);
      }
    }
  });

  it('in the menu and a panel of a phone', async () => {
    const { page } = await open({ size: SIZES[2] });
    await page.getByRole('button', { name: 'Menu', exact: true }).click();
    await page.getByRole('navigation', { name: 'Panels' }).waitFor();
    expect(await foundInBothLooks(page, '.masthead'), 'menu').toEqual([]);
    await page
      .getByRole('navigation', { name: 'Panels' })
      .getByRole('button', { name: 'Band', exact: true })
      .click();
    await openBeside(page, 'Mixer');
    expect(await foundInBothLooks(page, '.panel'), 'mixer').toEqual([]);
  });
});

/** Whether what colours tell elsewhere is told by something that stays: fill, border, outline of an element. */
const looksOf = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => {
      const { backgroundColor, borderTopWidth, borderTopStyle, outlineStyle, outlineWidth } =
        getComputedStyle(element);
      const border = borderTopStyle === 'none' ? 0 : Number.parseFloat(borderTopWidth);
      const outline = outlineStyle === 'none' ? 0 : Number.parseFloat(outlineWidth);
      return { fill: backgroundColor, border, outline };
    });

const CURRENT = '.bars li[aria-current="true"] .bar';
const OTHER = '.bars li:not([aria-current]):not([data-next="true"]) .bar';

describe('more contrast and colours of the system', () => {
  it('keep the bar being heard, the degrees, the chosen drawing and the focus visible', async () => {
    const { page } = await open();
    await page.emulateMedia({ contrast: 'more' });
    expect((await looksOf(page, CURRENT)).outline).toBeGreaterThanOrEqual(3);
    expect((await looksOf(page, '.degree')).border).toBeGreaterThanOrEqual(2);

    await page.emulateMedia({ contrast: 'no-preference', forcedColors: 'active' });
    const [current, other] = [await looksOf(page, CURRENT), await looksOf(page, OTHER)];
    expect(current.fill).not.toBe(other.fill);
    expect((await looksOf(page, '.degree')).border).toBeGreaterThanOrEqual(2);
    const chosen = await looksOf(page, '.segments button[aria-pressed="true"]');
    expect(chosen.fill).not.toBe((await looksOf(page, '.segments button[aria-pressed="false"]')).fill);
    // Long names are wrapped there too: the control's own text would be cut.
    expect(await page.locator('.transport .chosen').first().isVisible()).toBe(true);
    expect(
      await page
        .locator('.transport select')
        .first()
        .evaluate((select) => getComputedStyle(select).color),
    ).toBe('rgba(0, 0, 0, 0)');
    await page.keyboard.press('Tab');
    expect((await looksOf(page, ':focus-visible')).outline).toBeGreaterThanOrEqual(4);
    await page.getByRole('button', { name: 'Band', exact: true }).click();
    await page.locator('.switch input').first().waitFor();
    expect((await looksOf(page, '.switch input:checked')).fill).not.toBe(
      (await looksOf(page, '.switch input:not(:checked)')).fill,
    );
    expect((await looksOf(page, '.panel-pages [aria-current]')).fill).not.toBe(
      (await looksOf(page, '.panel-pages .plain:not([aria-current])')).fill,
    );
  });
});
