import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { OwnChart } from '../../src/core/chart-text/own-chart';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { axeFinds } from '../helpers/axe';
import { builtPage, planned } from '../helpers/built-page';
import { lasting, layoutProblems, outOfSight, resize, sizePage } from '../helpers/page-layout';
import { inSoak } from '../helpers/soak';

const { open } = builtPage();

const visit = async (
  [width, height]: readonly [number, number],
  settings: Partial<Settings> = {},
  kept: Readonly<Record<string, string>> = {},
) => {
  const { page } = await open({
    size: { width, height },
    kept,
    settings: { ...planned({ countInBars: 0, sounding: 'click' }), ...settings },
    reducedMotion: 'reduce',
  });
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  return { page };
};

const play = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Play' }).click();
  await page.getByRole('button', { name: 'Stop' }).waitFor();
};

/** The least letters of a kind, in px. */
const least = (page: Page, selector: string): Promise<number> =>
  page
    .locator(selector)
    .evaluateAll((all) =>
      Math.min(
        ...all
          .filter((each) => each.getClientRects().length > 0)
          .map((each) => Number.parseFloat(getComputedStyle(each).fontSize)),
      ),
    );

describe('the letters of the map', () => {
  it('use their room at every size', async () => {
    const { page } = await visit([1440, 900]);
    for (const [width, height, px] of [
      [1440, 900, 20],
      [1366, 768, 20],
      [1180, 820, 18],
      [1024, 768, 16],
      [820, 1180, 18],
      [390, 844, 16],
      [844, 390, 18],
    ] as const) {
      await resize(page, [width, height]);
      const letters = async (): Promise<number> =>
        Math.min(
          await least(page, '.comb .pill[data-role="chord"] b'),
          await least(page, '.comb .pill:not([data-role="chord"]) .note'),
        );
      await expect.poll(letters, { message: `${width} by ${height}` }).toBeGreaterThanOrEqual(px);
    }
  });
});

describe('what asks how large it is', () => {
  it('is a few boxes of the page, not its forty cells, which follow a new size all the same', async () => {
    const { page } = await visit([1440, 900]);
    const containers = await page
      .locator('.page *')
      .evaluateAll((all) => all.filter((each) => getComputedStyle(each).containerType !== 'normal').length);
    expect(containers).toBeGreaterThan(0);
    expect(containers).toBeLessThanOrEqual(6);
    // What holds the chart, the cards and the map is no box in any room: else they are all built anew for a panel.
    const boxes = () =>
      page
        .locator('.form, .reading')
        .evaluateAll((both) => both.map((each) => getComputedStyle(each).display));
    expect(await boxes()).toEqual(['contents', 'contents']);
    const wide = await least(page, '.comb .pill[data-role="chord"] b');
    await sizePage(page, [980, 900]);
    expect(await boxes()).toEqual(['contents', 'contents']);
    await sizePage(page, [390, 844]);
    await expect.poll(() => least(page, '.comb .pill[data-role="chord"] b')).toBeLessThan(wide);
    expect(await least(page, '.comb .pill[data-role="chord"] b')).toBeGreaterThanOrEqual(16);
  });
});

const TWO_A_BAR: Partial<Settings> = {
  formId: 'jazz-swing',
  ...planned({ countInBars: 0, sounding: 'click', repeat: { from: 10, to: 11 } }),
};

/** Four chords in many bars, short and long. */
const FOUR_A_BAR: OwnChart = {
  id: 'chart-1',
  name: 'Four a bar',
  text: 'Dm7 G7 Em7 A7 | Dm7 G7 C6 C | Fmaj7 Bm7b5 E7 Am7 | C |\nDm7 G7 | C | F F#dim7 C/G A7 | D7 G7 C G7 |',
  tonic: 'C',
  mode: 'major',
  meter: '4/4',
};

/** Two chords in many bars, one of them long or over another bass. */
const TWO_LONG: OwnChart = {
  ...FOUR_A_BAR,
  name: 'Two a bar',
  text: 'G7/D D7 | G7 C7 | Ebmaj7/G Ab13 | F#m7b5 B7b9 |\nG7 | C7 | G7 | G7 |\nD7 | C7 | G7 C/G | G7/D D7 |',
};

/** Names of notes, and the least px of chords in them. */
type Named = readonly [Settings['noteNames'], number];

describe('chords of a bar on a phone lying down', () => {
  it.each(
    inSoak<readonly [string, ...Named, OwnChart]>(
      [
        ['four', 'english', 15, FOUR_A_BAR],
        ['four', 'do', 12, FOUR_A_BAR],
        ['two of the longest', 'english', 15, TWO_LONG],
        ['two of the longest', 'do', 12, TWO_LONG],
      ],
      [
        ['four', 'english', 15, FOUR_A_BAR],
        ['two of the longest', 'english', 15, TWO_LONG],
      ],
    ),
  )(
    'are read while the band plays, %s in names of notes “%s”: %i px and more',
    async (_, noteNames, px, chart) => {
      const { page } = await visit(
        [844, 390],
        { formId: chart.id, noteNames },
        { charts: JSON.stringify([chart]) },
      );
      await play(page);
      await expect
        .poll(() => outOfSight(page, '.bars > :is([aria-current], [data-next="true"])'))
        .toEqual([]);
      expect(await lasting(() => layoutProblems(page, { covered: false }))).toEqual([]);
      expect(await least(page, '.bar .chord')).toBeGreaterThanOrEqual(px);
    },
  );
});

describe('two chords of a bar on a phone held upright', () => {
  it.each(
    inSoak<Named>(
      [
        ['english', 15],
        ['do', 10],
      ],
      [['do', 10]],
    ),
  )('stand each in one line, in names of notes “%s” at %i px and more', async (noteNames, px) => {
    const { page } = await visit(
      [390, 844],
      { formId: TWO_LONG.id, noteNames },
      { charts: JSON.stringify([TWO_LONG]) },
    );
    const lines = await page
      .locator('.bar .names[data-chords="2"] .chord')
      .evaluateAll((chords) =>
        chords.map(
          (each) => each.getBoundingClientRect().height / Number.parseFloat(getComputedStyle(each).fontSize),
        ),
      );
    expect(lines.length).toBe(12);
    expect(Math.max(...lines)).toBeLessThan(1.5);
    expect(await lasting(() => layoutProblems(page, { covered: false }))).toEqual([]);
    expect(await least(page, '.bar .chord')).toBeGreaterThanOrEqual(px);
  });
});

describe('map and chart', () => {
  type Shown = readonly [string, readonly [number, number], Partial<Settings>];
  const few: readonly Shown[] = [
    ['trading', [820, 1180], { trade: { on: true, calls: '' } }],
    ['with the Keys drawing', [1024, 768], { drawing: 'keys' }],
    ['two chords in every bar', [1366, 768], TWO_A_BAR],
  ];
  const all: readonly Shown[] = [
    ...few,
    ['trading', [1180, 820], { trade: { on: true, calls: '' } }],
    ['trading', [1024, 768], { trade: { on: true, calls: '' } }],
    [
      'with a line shown',
      [820, 1180],
      {
        line: { ...DEFAULT_SETTINGS.line, kind: 'chord tones', pace: 4 },
        technique: { drawBends: true, blowBends: true, overbends: true, off: [] },
      },
    ],
    ['two chords in every bar', [1440, 900], TWO_A_BAR],
  ];
  it.each(inSoak<Shown>(all, few))(
    'are seen whole while the band plays, %s at %j',
    async (_, size, settings) => {
      const { page } = await visit(size, settings);
      await play(page);
      await expect.poll(() => outOfSight(page, '.bars > li, .drawing .pill')).toEqual([]);
    },
  );
});

describe('head and transport', () => {
  it('show key and harp in one line and the mute at every width, whatever is open beside them', async () => {
    const { page } = await visit([1180, 820]);
    await play(page);
    const faults: string[] = [];
    const look = async (state: string): Promise<void> => {
      const found = await page.locator('.song-line').evaluate((line) => {
        const seen = [...line.querySelectorAll('strong')].every((each) => {
          const { left, right, top, bottom } = each.getBoundingClientRect();
          const hit = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
          return hit !== null && (hit === each || hit.contains(each));
        });
        return {
          seen,
          lines: Math.round(line.clientHeight / Number.parseFloat(getComputedStyle(line).fontSize)),
        };
      });
      if (!(await page.getByRole('button', { name: 'Mute the band' }).isVisible()))
        faults.push(`${state}: no mute`);
      if (!found.seen || found.lines > 1) faults.push(`${state}: ${JSON.stringify(found)}`);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      if (wide > 0) faults.push(`${state}: the page is ${wide} px too wide`);
    };
    await page.getByRole('button', { name: 'Song', exact: true }).click();
    await look('a panel beside it');
    await page.locator('.panel').getByRole('button', { name: 'Close' }).click();
    // What is wrong with a typed tempo stands over the transport.
    await page.locator('.transport').getByRole('textbox', { name: 'Tempo' }).fill('999');
    await page.keyboard.press('Enter');
    await page.getByRole('alert').filter({ hasText: 'out of reach' }).waitFor();
    for (const width of inSoak([1440, 1024, 820, 720, 640, 390, 320], [1024, 640, 320])) {
      await sizePage(page, [width, 768]);
      await look(`${width} px`);
    }
    await sizePage(page, [720, 450]);
    await look('720 by 450');
    expect(faults).toEqual([]);
  });
});

describe('axe finds nothing', () => {
  it('in the first visit’s question, the tour, and the notice of what waits', async () => {
    const { page } = await visit([1440, 900], { askHarp: true, changesWait: true });
    const faults = (within: string) => axeFinds(page, { within });
    expect(await faults('.harp-question')).toEqual([]);
    await page.getByRole('button', { name: 'Ask me later' }).click();
    await page.getByRole('button', { name: 'Help', exact: true }).click();
    await page.locator('.panel').getByRole('button', { name: /tour/i }).click();
    await page.getByText('Tour, step 1').waitFor();
    expect(await faults('.tour')).toEqual([]);
    await page.getByRole('button', { name: 'Leave the tour' }).click();
    await play(page);
    // Only what is under way has a next chorus to wait for.
    await page.locator('.beats [data-on="true"]').first().waitFor();
    await page.locator('.transport').getByLabel('Song key').selectOption('A');
    await page.getByRole('button', { name: 'Change now' }).waitFor();
    expect(await faults('.notices')).toEqual([]);
  });
});
