import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { ENTRIES } from '../../src/ui/page/entries';
import { builtPage, planned } from '../helpers/built-page';
import { closePanel, openBeside, openEntry } from '../helpers/open-panel';
import { outOfSight, resize } from '../helpers/page-layout';
import { play, problemsIn, SIZES, type Size } from '../helpers/size-walk';
import { inSoak, inTurn, soakIt } from '../helpers/soak';

const { open } = builtPage();

const visit = async (settings: Partial<Settings> = {}): Promise<Page> => {
  const { page } = await open({
    // A take whose first chorus ends in two bars of four chords.
    settings: { ...planned({ countInBars: 0, sounding: 'click' }), sameTake: true, ...settings },
    reducedMotion: 'reduce',
  });
  return page;
};

type Shown = readonly [string, turn: number, Partial<Settings>];

const FEW: readonly Shown[] = [
  ['trading', 0, { trade: { on: true, calls: '' } }],
  [
    'a line shown, in plain words, with notes beside tab',
    1,
    { line: { ...DEFAULT_SETTINGS.line, kind: 'guide tones' }, plainWords: true, besideTab: 'notes' },
  ],
  ['the Keys drawing', 2, { drawing: 'keys' }],
];

/** What of each list needs most room in the transport, by its longest word or the number of its letters. */
const LONG_NAMES = [
  ['Feel', 'Jump (two-beat)'],
  ['Form', 'Twelve bars, quick change with turnaround'],
  ['Position', '2nd position (cross)'],
  ['Tuning', 'Diminished'],
] as const;

/** Widths at which the transport has least room for what it holds there. */
const BARS = inSoak<Size>(
  [...SIZES, [1440, 720], [1366, 720], [1280, 720], [1240, 720]],
  [SIZES[0], [1280, 720]],
);

describe('at every size nothing is cut, covered or overlapping', () => {
  it('while the harp is asked for, at rest and playing', async () => {
    const page = await visit({ askHarp: true });
    const problems = [...(await problemsIn(page, 'asked for the harp'))];
    await page.getByRole('button', { name: 'Ask me later' }).click();
    problems.push(...(await problemsIn(page, 'resting', { sizes: inTurn(SIZES, 1) })));
    await resize(page, SIZES[0]);
    for (const [label, text] of LONG_NAMES)
      await page.locator('.transport').getByLabel(label, { exact: true }).selectOption({ label: text });
    problems.push(...(await problemsIn(page, 'long names chosen', { sizes: BARS })));
    await play(page);
    problems.push(...(await problemsIn(page, 'playing')));
    expect(problems).toEqual([]);
  });

  it('with any panel open, each of them opened at another size', async () => {
    const page = await visit();
    await play(page);
    const problems: string[] = [];
    for (const [i, { text }] of ENTRIES.entries()) {
      const sizes = inSoak(SIZES, inTurn(SIZES, i).slice(0, 2));
      await resize(page, sizes[0] ?? SIZES[0]);
      await openEntry(page, text);
      problems.push(
        ...(await problemsIn(page, `${text} open`, {
          covered: ([width]) => width < 1100,
          sizes,
        })),
      );
      await closePanel(page);
    }
    expect(problems).toEqual([]);
  });

  soakIt('in panels of a phone, with every fold open and a song of a long name', async () => {
    const page = await visit();
    const [, , , , , phone = SIZES[0]] = SIZES;
    await resize(page, phone);
    const problemsOf = async (state: string) => {
      await page.evaluate(() => {
        for (const fold of document.querySelectorAll('details')) fold.open = true;
      });
      return problemsIn(page, state, { covered: () => true, sizes: [phone] });
    };
    await openEntry(page, 'Book');
    await page
      .getByLabel('Keep as a new song called')
      .fill('Down the lane past the mill and back over the bridge');
    await page.getByRole('button', { name: 'Keep song' }).click();
    await closePanel(page);
    await page.keyboard.press('+');
    await openEntry(page, 'Book');
    await page.getByRole('button', { name: /as it is now$/ }).waitFor();
    const problems = [...(await problemsOf('a long name'))];
    await closePanel(page);
    await openEntry(page, 'Practise');
    await openBeside(page, 'Bends');
    await page.getByRole('heading', { name: 'A first bend', exact: true }).waitFor();
    problems.push(...(await problemsOf('first bends')));
    expect(problems).toEqual([]);
  });

  it.each(inSoak<Shown>([...FEW, ['two chords in a bar, many bars', 0, { formId: 'jazz-swing' }]], FEW))(
    'with %s',
    async (state, turn, settings) => {
      const page = await visit(settings);
      await play(page);
      const problems = await problemsIn(page, state, { sizes: inTurn(SIZES, turn) });
      await resize(page, SIZES[0]);
      expect(await outOfSight(page, '.map [data-sound]'), 'sounds of the map').toEqual([]);
      expect(problems).toEqual([]);
    },
  );
});
