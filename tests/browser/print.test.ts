import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { OwnChart } from '../../src/core/chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { builtPage } from '../helpers/built-page';
import { openEntry } from '../helpers/open-panel';
import { inSoak } from '../helpers/soak';

const { open: openBuilt } = builtPage();

const CHORDS = [
  'Cm7 F7',
  'Bbmaj7',
  'Ebmaj7 Ab13#11',
  'Dm7b5 G7b9',
  'Gm7 C9',
  'F#dim7',
  'Am7 D7#9',
  'Bb6 G7 Cm7 F7',
];

const LONGEST: OwnChart = {
  id: 'chart-1',
  name: 'All the hall band knows',
  text: Array.from({ length: 128 }, (_, i) => CHORDS[i % CHORDS.length]).join(' | '),
  tonic: 'Bb',
  mode: 'major',
  meter: '4/4',
};

const EVERYTHING: Partial<Settings> = {
  technique: { drawBends: true, blowBends: true, overbends: true, off: [] },
  line: { ...DEFAULT_SETTINGS.line, kind: 'chord tones', pace: 4 },
};

const open = (settings: Partial<Settings> = {}, look: 'light' | 'dark' = 'light') =>
  openBuilt({ settings, look, kept: { charts: JSON.stringify([LONGEST]) } });

/** Turns the page to paper, and waits until that is here: a printer that is quicker gets a sentence instead. */
const toPaper = async (page: Page): Promise<void> => {
  await page.emulateMedia({ media: 'print' });
  await page.locator('.print-chart').waitFor();
};

/** Turns the page back, and waits until it is as it was. */
const toScreen = async (page: Page): Promise<void> => {
  await page.emulateMedia({ media: null });
  await page.locator('.paper').waitFor({ state: 'detached' });
};

/** Page objects of a PDF; the browser writes their dictionaries plain (ISO 32000-1, 7.7.3.3). */
const countPages = (pdf: Buffer): number => [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b/g)].length;

const FORMATS = ['A4', 'Letter'] as const;
type Load = readonly [string, Partial<Settings>];
/** What fills a page most, of its kind. */
const FULLEST: readonly Load[] = [
  ['twenty-four bars with every technique and a line', { formId: 'twenty-four', ...EVERYTHING }],
  [
    'sixteen bars on a harp of fourteen holes',
    { formId: 'sixteen-b', ...EVERYTHING, tuning: fourteenHoles() },
  ],
  ['the longest chart with every technique and a line', { formId: 'chart-1', ...EVERYTHING }],
];
const LOADS: readonly Load[] = [
  ...FULLEST,
  ['twelve bars', {}],
  ['twelve bars with every technique and a line', EVERYTHING],
  ['twenty-four bars', { formId: 'twenty-four' }],
  ['a jazz form of ten chords', { formId: 'jazz-bebop' }],
  ['the longest chart of one’s own', { formId: 'chart-1' }],
];

function fourteenHoles(): Settings['tuning'] {
  const { tuning } = DEFAULT_SETTINGS;
  const grow = (row: readonly number[]): readonly number[] => [
    ...row,
    ...[1, 2, 3, 4].map((i) => (row[9] ?? 0) + 3 * i),
  ];
  return { id: 'own', name: 'Long harp', blow: grow(tuning.blow), draw: grow(tuning.draw) };
}

const paperWidth = (page: Page) =>
  page.locator('.paper').evaluate((paper) => {
    const { width } = paper.getBoundingClientRect();
    const right = paper.getBoundingClientRect().left + width;
    const inside = [...paper.querySelectorAll('*')].map((each) => each.getBoundingClientRect().right);
    return { right, furthest: Math.max(...inside) };
  });

describe('the song as paper', () => {
  for (const [i, [name, settings]] of inSoak(LOADS, FULLEST.slice(1)).entries()) {
    it(`fits one page: ${name}`, async () => {
      const { page, watch } = await open(settings);
      await toPaper(page);
      const { right, furthest } = await paperWidth(page);
      expect(furthest).toBeLessThanOrEqual(right + 1);
      await toScreen(page);
      for (const format of inSoak(FORMATS, [FORMATS[i % 2] ?? 'A4'])) {
        expect({ format, pages: countPages(await page.pdf({ format })) }).toEqual({ format, pages: 1 });
      }
      expect(watch.errors).toEqual([]);
    });
  }

  it('shows the sheet and nothing else: title, harp, every bar, degrees on the harp and the scale', async () => {
    const { page } = await open();
    // Paper is asked for from a panel.
    await openEntry(page, 'Practise');
    await toPaper(page);
    const paper = page.getByRole('article', { name: 'The song on paper' });
    await expect.poll(() => page.getByRole('button').count()).toBe(0);
    const text = await paper.textContent();
    for (const part of [
      'Twelve bars, quick change with turnaround',
      'Song in G, C harp, 2nd position (cross)',
      'Over D7',
      'Minor blues in G',
      '3↓/',
    ]) {
      expect(text).toContain(part);
    }
    expect(await paper.locator('.print-chart li').count()).toBe(12);
    expect(await paper.locator('.print-comb text').filter({ hasText: '♭7' }).count()).toBeGreaterThan(4);
    await toScreen(page);
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  });

  it('is black lines on white, in the night look too', async () => {
    const { page } = await open({ look: 'night' }, 'dark');
    await toPaper(page);
    const inks = await page.evaluate(() => {
      const seen = [...document.querySelectorAll('.paper, .paper *')].map((each) => getComputedStyle(each));
      const of = (pick: (style: CSSStyleDeclaration) => string) => [...new Set(seen.map(pick))];
      return {
        text: of(({ color }) => color),
        ground: of(({ backgroundColor }) => backgroundColor),
        page: getComputedStyle(document.body).backgroundColor,
        filled: [...document.querySelectorAll('.paper rect')].filter(
          (r) => getComputedStyle(r).fill !== 'none',
        ).length,
      };
    });
    expect(inks).toEqual({
      text: ['rgb(0, 0, 0)'],
      ground: ['rgba(0, 0, 0, 0)'],
      page: 'rgb(255, 255, 255)',
      filled: 0,
    });
  });

  it('is printed by its button', async () => {
    const { page } = await open();
    await page.evaluate(() => {
      window.print = () => {
        window.dispatchEvent(new Event('beforeprint'));
        document.body.dataset.printed = String(document.querySelectorAll('.paper h1').length);
        window.dispatchEvent(new Event('afterprint'));
      };
    });
    await page.getByRole('button', { name: 'Take away' }).click();
    await page.getByRole('button', { name: 'Print' }).click();
    await page.locator('body[data-printed="1"]').waitFor();
    await page.locator('.paper').waitFor({ state: 'detached' });
  });
});
