import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { OwnChart } from '../../src/core/chart-text/own-chart';
import type { Tuning } from '../../src/core/harp/harp';
import { TUNINGS } from '../../src/core/harp/tunings';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { ENTRIES } from '../../src/ui/page/entries';
import { builtPage, planned } from '../helpers/built-page';
import { closePanel, openBeside, openEntry } from '../helpers/open-panel';
import { lasting, layoutProblems, resize } from '../helpers/page-layout';

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

const visit = async (settings: Partial<Settings> = {}): Promise<Page> => {
  const { page } = await open({
    // A take whose first chorus ends in two bars of four chords.
    settings: { ...planned({ countInBars: 0 }), sameTake: true, ...settings },
    kept: { charts: JSON.stringify([LONG_CHART]) },
    visit: { reducedMotion: 'reduce' },
  });
  return page;
};

const play = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Play' }).click();
  await page.getByRole('button', { name: 'Stop' }).waitFor();
};

/** Lets the page keep the screen on, so that no sentence about that takes room. */
const keepScreenOn = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const request = async () =>
      Object.assign(new EventTarget(), { released: false, release: async () => {} });
    Object.defineProperty(navigator, 'wakeLock', { value: { request } });
  });

type Size = (typeof SIZES)[number];

/** What stands in the way at every size, which the open page is given one after the other, by state and size. */
const problemsIn = async (
  page: Page,
  state: string,
  { covered = () => false, from = 0 }: { covered?: (size: Size) => boolean; from?: number } = {},
): Promise<readonly string[]> => {
  const problems: string[] = [];
  for (const size of [...SIZES.slice(from), ...SIZES.slice(0, from)]) {
    await resize(page, size);
    const found = await lasting(() => layoutProblems(page, { covered: covered(size) }));
    problems.push(...found.map((problem) => `${state} at ${size[0]} × ${size[1]}: ${problem}`));
  }
  return problems;
};

describe('at every size nothing is cut, covered or overlapping', () => {
  it('while the harp is asked for, at rest and playing', async () => {
    const page = await visit({ askHarp: true });
    const problems = [
      ...(await problemsIn(page, 'asked for the harp', { covered: ([width]) => width < 940 })),
    ];
    await page.getByRole('button', { name: 'Ask me later' }).click();
    problems.push(...(await problemsIn(page, 'resting')));
    await play(page);
    problems.push(...(await problemsIn(page, 'playing')));
    await page.context().close();
    expect(problems).toEqual([]);
  });

  it('with any panel open, each of them opened at another size', async () => {
    const page = await visit();
    await play(page);
    const problems: string[] = [];
    for (const [i, { text }] of ENTRIES.entries()) {
      const from = i % SIZES.length;
      await resize(page, SIZES[from]);
      await openEntry(page, text);
      problems.push(
        ...(await problemsIn(page, `${text} open`, { covered: ([width]) => width < 1100, from })),
      );
      await closePanel(page);
    }
    await page.context().close();
    expect(problems).toEqual([]);
  });

  it('with the pages behind the first of an entry open, each at four sizes', async () => {
    const page = await visit();
    const problems: string[] = [];
    const behind = ENTRIES.flatMap(({ text, pages }) =>
      pages.slice(1).map((each) => ({ entry: text, ...each })),
    );
    for (const [i, { entry, text }] of behind.entries()) {
      const sizes = [0, 2, 5, 6].map((at) => SIZES[(at + (i % 2)) % SIZES.length] ?? SIZES[0]);
      await resize(page, sizes[0] ?? SIZES[0]);
      await openEntry(page, entry);
      await openBeside(page, text);
      for (const size of sizes) {
        await resize(page, size);
        const found = await lasting(() => layoutProblems(page, { covered: size[0] < 1100 }));
        problems.push(...found.map((problem) => `${text} at ${size[0]} × ${size[1]}: ${problem}`));
      }
      await closePanel(page);
    }
    await page.context().close();
    expect(problems).toEqual([]);
  });

  it('while warming up', async () => {
    const page = await visit();
    await openEntry(page, 'Practise');
    await page.getByRole('button', { name: 'Start the warm-up' }).click();
    await page.locator('.warm-up').waitFor();
    const problems = await problemsIn(page, 'warming up');
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
    ['many bars, in plain words', { formId: 'twenty-four', plainWords: true }],
  ] as const)('with %s', async (state, settings) => {
    const page = await visit(settings);
    if (state === 'long names') await keepScreenOn(page);
    await play(page);
    const problems = await problemsIn(page, state);
    await page.context().close();
    expect(problems).toEqual([]);
  });
});
