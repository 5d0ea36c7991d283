import axe from 'axe-core';
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
  // Half a megabyte of script: once a page.
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  return page.evaluate(
    async ([part, rules]) => {
      const { axe: here } = window as unknown as { axe: typeof axe };
      const { violations } = await here.run(part ?? document, {
        resultTypes: ['violations'],
        // What style sheets say is asked of the browser, not of their text.
        preload: false,
        ...(rules === null ? {} : { runOnly: rules }),
      });
      return violations.map(({ id, nodes }) => [id, nodes[0]?.html]);
    },
    [within ?? null, coloursOnly ? OF_COLOURS : null] as const,
  );
};

/** Lets the system turn to its dark or light look, and waits until the page has followed. */
export const turnTo = async (page: Page, look: 'light' | 'dark'): Promise<void> => {
  await page.emulateMedia({ colorScheme: look });
  await page.locator(`:root[data-look="${look === 'light' ? 'day' : 'night'}"]`).waitFor();
};
