import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { OwnChart } from '../../src/core/chart-text/own-chart';
import type { Tuning } from '../../src/core/harp/harp';
import { TUNINGS } from '../../src/core/harp/tunings';
import type { Settings } from '../../src/core/settings/settings';
import { ENTRIES } from '../../src/ui/page/entries';
import { builtPage, planned } from '../helpers/built-page';
import { closePanel, openBeside, openEntry } from '../helpers/open-panel';
import { lasting, outOfSight, resize } from '../helpers/page-layout';
import { play, problemsIn, SIZES, sizesFrom } from '../helpers/size-walk';

const { open } = builtPage();

const tuningOf = (id: string): Tuning => {
  const found = TUNINGS.find((tuning) => tuning.id === id);
  if (found === undefined) throw new Error(`There is no tuning ${id}`);
  const { name, blow, draw } = found;
  return { id, name, blow, draw };
};

/** A chart of the player's own, with names and chords as long as they come. */
const LONG_CHART: OwnChart = {
  id: 'chart-1',
  name: 'The evening walk past the old mill and back over the bridge, second version',
  text: 'Cm7b5 F7alt | Bbm(maj7) | Ebmaj7#11/G | Ab13sus4 |\nDbm7 Gb7 Cm7 F7 | Bb6/9 | N.C. | C#m7b5/E |',
  tonic: 'Bb',
  mode: 'major',
  meter: '4/4',
};

const visit = async (
  settings: Partial<Settings> = {},
  kept: Readonly<Record<string, string>> = {},
): Promise<Page> => {
  const { page } = await open({
    settings: { ...planned({ countInBars: 0 }), sameTake: true, ...settings },
    kept: { charts: JSON.stringify([LONG_CHART]), ...kept },
    reducedMotion: 'reduce',
  });
  return page;
};

describe('at every size nothing is cut, covered or overlapping', () => {
  it.each(ENTRIES.flatMap(({ text: entry, pages }) => pages.slice(1).map(({ text }) => ({ entry, text }))))(
    'with $text of $entry open',
    async ({ entry, text }) => {
      const page = await visit();
      await openEntry(page, entry);
      await openBeside(page, text);
      const problems = await problemsIn(page, text, { covered: ([width]) => width < 1100 });
      await closePanel(page);
      expect(problems).toEqual([]);
    },
  );

  it('with any panel open in the middle of a song, each opened at every size', async () => {
    const page = await visit();
    await play(page);
    const problems: string[] = [];
    for (const { text } of ENTRIES) {
      for (const [from, size] of SIZES.entries()) {
        await resize(page, size);
        await openEntry(page, text);
        const [here = size] = sizesFrom(from);
        problems.push(
          ...(await problemsIn(page, `${text} opened`, {
            covered: ([width]) => width < 1100,
            sizes: [here],
          })),
        );
        await closePanel(page);
      }
    }
    expect(problems).toEqual([]);
  });

  it('while warming up', async () => {
    const page = await visit();
    await openEntry(page, 'Practise');
    await page.getByRole('button', { name: 'Start the warm-up' }).click();
    await page.locator('.warm-up').waitFor();
    const problems = await problemsIn(page, 'warming up');
    expect(problems).toEqual([]);
  });

  it.each([
    ['playing', {}],
    ['trading', { trade: { on: true, calls: '' } }],
    ['playing long names', { formId: LONG_CHART.id }],
  ] as const)('with a sentence to the player, %s', async (state, settings) => {
    // What is kept and cannot be read is told in a long sentence.
    const page = await visit(settings, { phrases: 'not a list' });
    await page.locator('.notice').waitFor();
    await play(page);
    const problems = await problemsIn(page, `a notice, ${state}`);
    expect(problems).toEqual([]);
  });

  it('with two sentences to the player, one over the other, beside which the map keeps its rows', async () => {
    const page = await visit({}, { phrases: 'not a list', practice: 'not a list', ears: 'not a list' });
    await page.locator('.notice + .notice').first().waitFor();
    await play(page);
    const found: string[] = [];
    for (const [width, height] of SIZES.filter(([width]) => width > 960)) {
      await resize(page, [width, height]);
      const cut = await lasting(() => outOfSight(page, '.comb .pill, .bars .chord'));
      found.push(...cut.map((each) => `${width} × ${height}: ${each}`));
    }
    expect(found).toEqual([]);
  });

  it.each([
    [
      'two chords in every bar that is played, a minor tuning, mirrored, large hole numbers',
      {
        formId: 'jazz-swing',
        mirrored: true,
        largeHoles: true,
        tuning: tuningOf('natural-minor'),
        ...planned({ countInBars: 0, repeat: { from: 10, to: 11 } }),
      },
    ],
    [
      'long names',
      {
        formId: LONG_CHART.id,
        tuning: {
          ...tuningOf('raised-three-blow'),
          id: 'own',
          name: `Retuned ${'by the window '.repeat(5)}`,
        },
      },
    ],
    [
      'four long chords in the bar that is played',
      { formId: LONG_CHART.id, ...planned({ countInBars: 0, repeat: { from: 4, to: 4 } }) },
    ],
    [
      'the longest of names',
      { formId: LONG_CHART.id, ...planned({ countInBars: 0, repeat: { from: 2, to: 2 } }) },
    ],
    ['many bars, in plain words', { formId: 'twenty-four', plainWords: true }],
  ] as const)('with %s', async (state, settings) => {
    const page = await visit(settings);
    await play(page);
    const problems = await problemsIn(page, state);
    expect(problems).toEqual([]);
  });
});

describe('the longest of names', () => {
  it('leaves the map whole where the stand does not scroll', async () => {
    const page = await visit({
      formId: LONG_CHART.id,
      ...planned({ countInBars: 0, repeat: { from: 2, to: 3 } }),
    });
    await play(page);
    const cut: string[] = [];
    for (const size of SIZES.slice(0, 5)) {
      await resize(page, size);
      const found = await lasting(() => outOfSight(page, '.comb .pill, .bars .chord'));
      cut.push(...found.map((each) => `${size[0]} × ${size[1]}: ${each}`));
    }
    expect(cut).toEqual([]);
  });
});

describe('the longest of names on a phone', () => {
  it.each([
    [390, 844],
    [844, 390],
  ] as const)('is read at %i × %i, with a capital of 30 px in Now', async (...size) => {
    const page = await visit({
      formId: LONG_CHART.id,
      ...planned({ countInBars: 0, repeat: { from: 2, to: 2 } }),
    });
    await resize(page, size);
    await play(page);
    await page.locator('.bars [aria-current="true"][aria-label^="Bar 3"]').waitFor();
    const sizes = await page.evaluate(() => {
      const sizeOf = (selector: string): number => {
        const element = document.querySelector(selector);
        return element === null ? 0 : Number.parseFloat(getComputedStyle(element).fontSize);
      };
      const [now, root, kind] = [
        '.fit.now header .chord',
        '.bars [aria-current="true"] .chord',
        '.bars [aria-current="true"] .quality',
      ].map(sizeOf);
      return { now, root, kind };
    });
    // A capital of the page's face is two thirds of its size.
    expect(sizes.now).toBeGreaterThanOrEqual(45);
    expect(sizes.root).toBeGreaterThanOrEqual(20);
    expect(sizes.kind).toBeGreaterThanOrEqual(12);
  });
});

describe('the tour', () => {
  it('stands beside what it is about on a phone lying down', async () => {
    const page = await visit();
    await resize(page, [844, 390]);
    await openEntry(page, 'Help');
    await page.getByRole('button', { name: 'Take the tour' }).click();
    const next = page.locator('.tour').getByRole('button', { name: 'Next', exact: true });
    for (let step = 1; step < 4; step += 1) await next.click();
    await page.getByRole('heading', { name: 'What fits now' }).waitFor();
    const covered = (): Promise<number> =>
      page.evaluate(() => {
        const [card, now] = ['.tour', '.fit.now'].map((each) =>
          document.querySelector(each)?.getBoundingClientRect(),
        );
        if (card === undefined || now === undefined) throw new Error('There is no tour or no card');
        return Math.min(card.right, now.right) - Math.max(card.left, now.left);
      });
    await expect.poll(covered).toBeLessThanOrEqual(0);
  });
});
