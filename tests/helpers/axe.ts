import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** The rules whose outcome colours decide; the others find the same in every look. */
const OF_COLOURS = ['color-contrast', 'link-in-text-block'];

export interface AxeScan {
  /** Scans this part only. */
  readonly within?: string | undefined;
  /** Scans for what colours decide only: for the second look of what was scanned whole in the first. */
  readonly coloursOnly?: boolean;
}

/** What axe finds wrong with the page as it stands: the rule and the first element against it. */
export const axeFinds = async (
  page: Page,
  { within, coloursOnly = false }: AxeScan = {},
): Promise<readonly unknown[]> => {
  // The page has no frames, so that the results need no second page to be put together in.
  const axe = new AxeBuilder({ page }).setLegacyMode(true).options({ resultTypes: ['violations'] });
  if (within !== undefined) axe.include(within);
  if (coloursOnly) axe.withRules(OF_COLOURS);
  const { violations } = await axe.analyze();
  return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
};

/** Lets the system turn to its dark or light look, and waits until the page has followed. */
export const turnTo = async (page: Page, look: 'light' | 'dark'): Promise<void> => {
  await page.emulateMedia({ colorScheme: look });
  await page.locator(`:root[data-look="${look === 'light' ? 'day' : 'night'}"]`).waitFor();
};
