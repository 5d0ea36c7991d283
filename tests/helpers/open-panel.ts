import type { Locator, Page } from 'playwright-core';

/** Waits until the open panel has something in it: it makes room on the stand first, and may have to be fetched. */
export const panelFilled = async (page: Page): Promise<Locator> => {
  const panel = page.locator('.panel');
  await panel.locator('.panel-body > *').first().waitFor({ state: 'attached' });
  await panel.getByText('One moment: this panel is being fetched.').waitFor({ state: 'detached' });
  return panel;
};

/** Opens the panel of an entry, on a phone by its menu. The page is to have settled in its size. */
export const openEntry = async (page: Page, text: string): Promise<Locator> => {
  const menu = page.getByRole('button', { name: 'Menu', exact: true });
  if (await menu.isVisible()) await menu.click();
  await page
    .getByRole('navigation', { name: 'Panels' })
    .getByRole('button', { name: text, exact: true })
    .click();
  return panelFilled(page);
};

/** Goes to another page of the open panel. */
export const openBeside = async (page: Page, text: string): Promise<Locator> => {
  const way = page.locator('.panel-pages').getByRole('button', { name: text, exact: true });
  await way.click();
  await page
    .locator('.panel-pages')
    .getByRole('button', { name: text, exact: true })
    .and(page.locator('[aria-current="page"]'))
    .waitFor();
  return panelFilled(page);
};

/** Closes the open panel and waits until it is gone. */
export const closePanel = async (page: Page): Promise<void> => {
  await page.locator('.panel').getByRole('button', { name: 'Close', exact: true }).click();
  await page.locator('.panel').waitFor({ state: 'detached' });
};
