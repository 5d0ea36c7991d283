import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { ENTRIES } from '../../src/ui/page/entries';
import { builtPage } from '../helpers/built-page';
import { layoutProblems } from '../helpers/page-layout';

/** Desktop, laptop, tablets both ways, phones both ways, and a desktop at 200 % zoom. */
const SIZES = [
  [1440, 900],
  [1366, 768],
  [1180, 820],
  [1024, 768],
  [820, 1180],
  [390, 844],
  [844, 390],
  [720, 450],
] as const;

const { open: openBuilt } = builtPage();

const visit = async ([width, height]: readonly [number, number], settings: Partial<Settings> = {}) => {
  const { page } = await openBuilt({
    size: { width, height },
    settings: {
      plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0 },
      // A take whose first chorus ends in two bars of four chords.
      sameTake: true,
      ...settings,
    },
    visit: { reducedMotion: 'reduce', serviceWorkers: 'block' },
    until: 'load',
  });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  return page;
};

const openEntry = async (page: Page, text: string): Promise<void> => {
  const menu = page.getByRole('button', { name: 'Menu' });
  if (await menu.isVisible()) await menu.click();
  await page
    .getByRole('navigation', { name: 'Panels' })
    .getByRole('button', { name: text, exact: true })
    .click();
};

/** What stands in the way in each state, by state. */
const problemsIn = async (page: Page, state: string, covered = false): Promise<readonly string[]> =>
  (await layoutProblems(page, { covered })).map((problem) => `${state}: ${problem}`);

describe.each(SIZES)('at %d × %d', (...size) => {
  it('cuts, covers and overlaps nothing at rest, playing and with each panel open', async () => {
    const page = await visit(size, { askHarp: true });
    const problems = [...(await problemsIn(page, 'asked for the harp', size[0] < 940))];
    await page.getByRole('button', { name: 'Ask me later' }).click();
    problems.push(...(await problemsIn(page, 'resting')));
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    problems.push(...(await problemsIn(page, 'playing')));
    for (const { text } of ENTRIES) {
      await openEntry(page, text);
      const panel = page.locator('.panel');
      await panel.waitFor();
      const besides = size[0] >= 1100;
      problems.push(...(await problemsIn(page, `${text} open`, !besides)));
      await panel.getByRole('button', { name: 'Close' }).click();
    }
    await page.context().close();
    expect(problems).toEqual([]);
  });

  it.each([
    ['trading', { trade: { on: true, calls: '' } }],
    [
      'a line shown, in plain words, with notes beside tab',
      {
        line: { ...DEFAULT_SETTINGS.line, kind: 'guide tones' },
        plainWords: true,
        besideTab: 'notes',
      },
    ],
    ['the Keys drawing', { drawing: 'keys' }],
    ['two chords in a bar, many bars', { formId: 'jazz-swing' }],
  ] as const)('cuts, covers and overlaps nothing with %s', async (state, settings) => {
    const page = await visit(size, settings);
    await page.getByRole('button', { name: 'Play' }).click();
    await page.getByRole('button', { name: 'Stop' }).waitFor();
    const problems = await problemsIn(page, state);
    await page.context().close();
    expect(problems).toEqual([]);
  });
});
