import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { spare } from '../helpers/built-page';
import { openBeside, openEntry } from '../helpers/open-panel';
import { servedBrowser } from '../helpers/served-browser';

describe('an exercise', () => {
  const { browser, address } = servedBrowser();

  const visit = async (where: string): Promise<{ context: BrowserContext; page: Page }> => {
    const context = await browser().newContext({ serviceWorkers: 'block' });
    context.setDefaultTimeout(60_000);
    await spare(context);
    const page = await context.newPage();
    await page.goto(where);
    return { context, page };
  };

  it('opens whole from a link in a browser profile that has never seen the page', async () => {
    const teacher = await visit(address());
    await openEntry(teacher.page, 'Practise');
    await openBeside(teacher.page, 'Phrases');
    await teacher.page.getByText('Exercises', { exact: true }).click();
    await teacher.page.getByRole('button', { name: 'Put “Slower, please” on the stand' }).click();
    await teacher.page.getByText('For a class', { exact: true }).click();
    await teacher.page.getByRole('button', { name: 'Make a link to the exercise' }).click();
    const link = await teacher.page.getByLabel(/^The exercise as a link/).inputValue();
    await openBeside(teacher.page, 'Over the band');
    const calls = await teacher.page.getByLabel(/Your own calls/).inputValue();
    expect(calls.split('\n').length).toBeGreaterThan(3);

    const player = await visit(link);
    await player.page.getByRole('button', { name: 'Open it', exact: true }).click();
    await openEntry(player.page, 'Practise');
    await expect.poll(() => player.page.getByLabel(/Your own calls/).inputValue()).toBe(calls);
    expect(await player.page.getByLabel('After your answer').inputValue()).toBe('slower');
    expect(await player.page.getByLabel('Tempo', { exact: true }).inputValue()).toBe('96');
    expect(player.page.url()).toBe(address());
    await Promise.all([teacher.context.close(), player.context.close()]);
  });
});
