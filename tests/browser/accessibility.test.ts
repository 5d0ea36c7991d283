import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { ENTRIES } from '../../src/ui/page/entries';
import { builtPage, SIZES } from '../helpers/built-page';

const { open } = builtPage();

/** What axe finds wrong with the page as it stands, or within a part of it: the rule and the first element against it. */
const violations = async (page: Page, within?: string): Promise<readonly unknown[]> => {
  const axe = new AxeBuilder({ page });
  const { violations: found } = await (within === undefined ? axe : axe.include(within)).analyze();
  return found.map(({ id, nodes }) => [id, nodes[0]?.html]);
};

const LOOKS = ['light', 'dark'] as const;

/** Opens whatever is folded, so that nothing is scanned past. */
const unfold = async (page: Page): Promise<void> => {
  const folded = page.locator('details:not([open]) > summary:visible');
  while ((await folded.count()) > 0) await folded.first().click();
};

describe('axe finds nothing', () => {
  it.each(SIZES.flatMap((size) => LOOKS.map((look) => [size.width, look, size] as const)))(
    'at %i wide, %s, at rest',
    async (_, look, size) => {
      const { context, page } = await open({ size, look });
      expect(await violations(page)).toEqual([]);
      await context.close();
    },
  );

  it.each(LOOKS)('in any panel, %s', async (look) => {
    const { context, page } = await open({ look });
    for (const { text, pages } of ENTRIES) {
      await page
        .getByRole('navigation', { name: 'Panels' })
        .getByRole('button', { name: text, exact: true })
        .click();
      for (const { text: name } of pages) {
        if (pages.length > 1) await page.getByRole('button', { name, exact: true }).click();
        await unfold(page);
        // The stand beside it is the one that was scanned at rest.
        expect(await violations(page, '.panel'), name).toEqual([]);
      }
    }
    await context.close();
  });

  it.each(LOOKS)('in the menu and a panel of a phone, %s', async (look) => {
    const { context, page } = await open({ look, size: SIZES[2] });
    await page.getByRole('button', { name: 'Menu', exact: true }).click();
    expect(await violations(page), 'menu').toEqual([]);
    await page
      .getByRole('navigation', { name: 'Panels' })
      .getByRole('button', { name: 'Band', exact: true })
      .click();
    await page.getByRole('button', { name: 'Mixer', exact: true }).click();
    expect(await violations(page), 'mixer').toEqual([]);
    await context.close();
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
    const { context, page } = await open();
    await page.emulateMedia({ contrast: 'more' });
    expect((await looksOf(page, CURRENT)).outline).toBeGreaterThanOrEqual(3);
    expect((await looksOf(page, '.degree')).border).toBeGreaterThanOrEqual(2);

    await page.emulateMedia({ contrast: 'no-preference', forcedColors: 'active' });
    const [current, other] = [await looksOf(page, CURRENT), await looksOf(page, OTHER)];
    expect(current.fill).not.toBe(other.fill);
    expect((await looksOf(page, '.degree')).border).toBeGreaterThanOrEqual(2);
    const chosen = await looksOf(page, '.segments button[aria-pressed="true"]');
    expect(chosen.fill).not.toBe((await looksOf(page, '.segments button[aria-pressed="false"]')).fill);
    await page.keyboard.press('Tab');
    expect((await looksOf(page, ':focus-visible')).outline).toBeGreaterThanOrEqual(4);
    await context.close();
  });
});
