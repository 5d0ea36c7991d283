import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openLog = async () => {
  const page = openPage();
  await page.user.click(screen.getByRole('button', { name: 'Book' }));
  await page.user.click(screen.getByRole('button', { name: 'Log' }));
  return page;
};

const playFor = async ({ session, band, log }: Awaited<ReturnType<typeof openLog>>, bars: number) => {
  await session.commands.play();
  for (let bar = 0; bar < bars; bar += 1) {
    band.hear(2, bar);
    log.wait(2);
  }
  session.commands.stop();
};

/** Opens a fold as a browser does. */
const unfold = (details: HTMLDetailsElement | null): void => {
  if (details === null) throw new Error('There is nothing to unfold');
  details.open = true;
  fireEvent(details, new Event('toggle'));
};

describe('the log', () => {
  it('says what it is for while there is nothing, then what was played, which can be deleted and brought back', async () => {
    const page = await openLog();
    expect(screen.getByText(/^Nothing yet\. Play a song/)).toBeTruthy();
    await playFor(page, 6);
    const entry = (await screen.findByText('Shuffle in G')).closest('li');
    expect(entry?.textContent).toMatch(/Shuffle in G, 12 s.*G, 2nd position \(cross\), C harp/);
    await page.user.click(screen.getByRole('button', { name: 'Delete Shuffle in G from the log' }));
    expect(screen.queryByText('Shuffle in G', { selector: '.log-entry strong' })).toBeNull();
    await page.user.click(screen.getByRole('button', { name: 'Bring back' }));
    expect(screen.getByText('Shuffle in G', { selector: '.log-entry strong' })).toBeTruthy();
  });

  it('draws what was played, each picture with a sentence and a table that say the same', async () => {
    const page = await openLog();
    await playFor(page, 12);
    const year = await screen.findByRole('img', { name: /^Minutes by day over a year: 0 minutes on 1 day/ });
    const figure = year.closest('figure') as HTMLElement;
    unfold(figure.querySelector('details'));
    const table = within(figure).getByRole('table', { hidden: true });
    expect(within(table).getByRole('rowheader', { name: '2026-11-25', hidden: true })).toBeTruthy();
    for (const fold of document.querySelectorAll<HTMLDetailsElement>('details.fold')) unfold(fold);
    const ladder = screen.getByRole('img', {
      name: 'Shuffle in G: 104 beats a minute, 1 chorus.',
      hidden: true,
    });
    expect(ladder.querySelectorAll('circle')).toHaveLength(1);
    expect(screen.getByText(/^No bend has been heard/)).toBeTruthy();
  });

  it('draws every bend on the comb, how often it is hit of late and before, harp by harp', async () => {
    const { log, user } = await openLog();
    const row = (day: string, harp: string, bends: readonly object[]) => ({
      ...{ version: 1, id: `${day} ${harp}`, kind: 'bends', began: Date.parse(day), day, song: 'Bends' },
      ...{ form: '', key: 'G', harp: `${harp} harp`, harpKind: harp, position: 2, choruses: 0, seconds: 9 },
      ...{ laps: [], heard: null, bends, phrases: [] },
    });
    const sum = (sound: string, tries: number, hits: number, cents: number) => ({
      ...{ sound, tries, hits, measured: tries, cents: cents * tries, squares: cents * cents * tries },
    });
    const put = [
      row('2026-08-03', 'C', [sum("4D'", 10, 2, -40)]),
      row('2026-11-23', 'C', [sum("4D'", 4, 3, -12), sum('6OB', 2, 0, 30)]),
      row('2026-11-24', 'A', [sum("3D'", 2, 2, 0)]),
    ];
    act(() => log.kept.tell({ put, removed: [] }));
    const fold = (await screen.findByText('Bends over the weeks')).closest('details');
    unfold(fold);
    const comb = await screen.findByRole('img', {
      name: /^Bends of the C harp on the comb: 2 with 16 tries/,
    });
    const figures = [...comb.querySelectorAll('text')].map(({ textContent }) => textContent);
    expect(figures.slice(-4)).toEqual(['75', '−12', '0', '+30']);
    unfold(comb.closest('figure')?.querySelector('details') ?? null);
    const table = within(comb.closest('figure') as HTMLElement).getByRole('table');
    expect(
      within(table).getByRole('row', { name: '4 draw bent a semitone 75 % of 4 −12 20 % of 10' }),
    ).toBeTruthy();
    await user.selectOptions(screen.getByRole('combobox', { name: 'Harp' }), 'A harp');
    expect(
      screen.getByRole('img', { name: /^Bends of the A harp on the comb: 1 with 2 tries/ }),
    ).toBeTruthy();
  });

  it('is off in one switch', async () => {
    const page = await openLog();
    await page.user.click(screen.getByRole('checkbox', { name: 'Write down what I play' }));
    await playFor(page, 6);
    expect(screen.getByText(/^Nothing yet\. Play a song/)).toBeTruthy();
  });
});
