import { act, cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const panel = () => within(screen.getByRole('region', { name: 'Your charts' }));
const chords = () => panel().getByLabelText<HTMLTextAreaElement>('Chords');
const button = (name: string | RegExp) => panel().getByRole('button', { name });
const understood = () =>
  panel()
    .getAllByRole('button', { name: /show it in the text$/ })
    .map((each) => each.getAttribute('aria-label')?.replace(': show it in the text', ''));

const openPanel = async () => {
  const page = openPage();
  await page.user.click(screen.getByRole('button', { name: 'Song' }));
  await page.user.click(screen.getByRole('button', { name: 'Charts' }));
  return page;
};

/** The panel with a new chart of a text. */
const write = async (text: string) => {
  const page = await openPanel();
  await page.user.click(button('New'));
  await page.user.click(chords());
  await page.user.paste(text);
  return page;
};

describe('the chart panel', () => {
  it('stands beside the song’s choices, and says what to do while there is no chart', async () => {
    await openPanel();
    const pages = within(screen.getByRole('navigation', { name: /^Beside / })).getAllByRole('button');
    expect(pages.map(({ textContent }) => textContent)).toEqual(['Choices', 'Charts']);
    expect(pages[1]?.getAttribute('aria-current')).toBe('page');
    expect(panel().getByText(/Begin with an empty chart, or with a copy/)).toBeTruthy();
    expect(panel().queryByLabelText('Chords')).toBeNull();
  });

  it('starts a copy of the form now chosen', async () => {
    const { user } = await openPanel();
    await user.click(button('Duplicate “Twelve bars, quick change with turnaround”'));
    expect(chords().value.split('\n')[2]).toBe('| D7 | C7 | G7 | D7 |');
    expect(understood()).toHaveLength(12);
  });

  it('shows every bar as it is understood, while it is typed', async () => {
    await write('Bb7 | F#m7b5 B7 | % | IV7');
    expect(understood()).toEqual(['Bar 1, B♭7', 'Bar 2, F♯ø7 then B7', 'Bar 3, F♯ø7 then B7', 'Bar 4, C7']);
  });

  it('lists what it does not understand with place, reason and advice, and marks the bar', async () => {
    await write('G7 | Qx | D7');
    const [problem] = within(panel().getByRole('list', { name: 'What to look at' })).getAllByRole('listitem');
    expect(problem?.textContent).toMatch(/Not understood line 1, column 6"Qx" is not a chord.*Write a chord/);
    expect(understood()[1]).toBe('Bar 2, G7, not understood');
  });

  it('says so when a line without bar lines makes one bar, and offers one chord a bar', async () => {
    const { user } = await write('C7 F7 C7 C7');
    expect(understood()).toEqual(['Bar 1, C7 then F7 then C7']);
    const list = within(panel().getByRole('list', { name: 'What to look at' }));
    expect(list.getByRole('button').textContent).toMatch(/The 4 chords of this line share one bar/);
    await user.click(button('Write one chord a bar'));
    expect(chords().value).toBe('C7 | F7 | C7 | C7');
    expect(understood()).toEqual(['Bar 1, C7', 'Bar 2, F7', 'Bar 3, C7', 'Bar 4, C7']);
    expect(panel().queryByRole('button', { name: 'Write one chord a bar' })).toBeNull();
    await user.click(button('Undo'));
    expect(chords().value).toBe('C7 F7 C7 C7');
  });

  it.each([
    ['C/Bb', /^♭7 ?B♭/],
    ['F#o7/Eb', /^𝄫7 ?E♭/u],
  ])('gives the bass of %s a row among what fits', async (text, row) => {
    const { user } = await write(text);
    await user.click(button('Save'));
    const now = within(
      within(screen.getByRole('region', { name: 'What fits' })).getByRole('article', { name: 'Now' }),
    );
    expect(now.getByRole('row', { name: row })).toBeTruthy();
  });

  it('refuses a text too long for a chart in words, and keeps it', async () => {
    const text = 'C7 | F7\n'.repeat(2600);
    await write(text);
    const list = within(panel().getByRole('list', { name: 'What to look at' }));
    expect(list.getByRole('button').textContent).toMatch(
      /20,800 characters, more than the 20,000 of a chart/,
    );
    expect(chords().value).toBe(text);
  });

  it.each(['F#o7/Eb', 'G#o7/F', 'Bdim7/Ab', 'C°7/Bbb'])(
    'shows %s, a diminished seventh over its seventh',
    async (text) => {
      await write(text);
      expect(understood()[0]).toMatch(/^Bar 1, [FGBC]♯?°7\/[EAF]♭?$/);
    },
  );

  it('selects the place in the text', async () => {
    const { user } = await write('G7 | C7\nD7 | Qx | G7');
    await user.click(button(/^Not understood/));
    const { selectionStart, selectionEnd, value } = chords();
    expect(value.slice(selectionStart, selectionEnd)).toBe('Qx');
    expect(document.activeElement).toBe(chords());
    await user.click(button(/^Bar 3,/));
    expect(chords().value.slice(chords().selectionStart, chords().selectionEnd)).toBe('D7');
  });

  it('reaches every bar with the arrow keys from one tab stop', async () => {
    const { user } = await write('G7 | C7 | D7 | E7 | A7 | B7');
    const bars = panel().getAllByRole('button', { name: /show it in the text$/ });
    expect(bars.map((each) => each.tabIndex)).toEqual([0, -1, -1, -1, -1, -1]);
    act(() => bars[0]?.focus());
    await user.keyboard('{ArrowRight}{ArrowDown}');
    expect(document.activeElement).toBe(bars[5]);
    await user.keyboard('{ArrowDown}');
    expect(document.activeElement).toBe(bars[5]);
  });

  it('tells a screen reader what is wrong when the typing rests', async () => {
    await write('G7 | Qx');
    const status = () =>
      panel()
        .getAllByRole('status')
        .map(({ textContent }) => textContent);
    expect(status()).not.toContain('2 bars. 1 place not understood.');
    await waitFor(() => expect(status()).toContain('2 bars. 1 place not understood.'));
  });

  it('lists what the band simplifies', async () => {
    await write('G13#11 | C7');
    expect(panel().getByText('What the band simplifies: 1')).toBeTruthy();
    expect(panel().getByText(/G13♯11: the band/)).toBeTruthy();
  });
});

describe('writing', () => {
  it('takes back and does again, with buttons and with keys, and keeps the focus', async () => {
    const { user } = await write('G7');
    await user.keyboard(' | C7');
    await user.keyboard('{Control>}z{/Control}');
    expect(chords().value).toBe('G7 | ');
    await user.keyboard('{Control>}{Shift>}z{/Shift}{/Control}');
    expect(chords().value).toBe('G7 | C7');
    const undo = button('Undo');
    for (let i = 0; i < 5; i += 1) await user.click(undo);
    expect(chords().value).toBe('');
    expect(undo.getAttribute('aria-disabled')).toBe('true');
    expect(document.activeElement).toBe(undo);
  });

  it('puts the caret behind what undo brought back', async () => {
    const { user } = await write('G7 | C7 | D7');
    act(() => chords().setSelectionRange(5, 7));
    await user.keyboard('{Backspace}');
    expect(chords().value).toBe('G7 |  | D7');
    await user.keyboard('{Control>}z{/Control}');
    expect([chords().value, chords().selectionStart]).toEqual(['G7 | C7 | D7', 7]);
  });

  it('transposes and respells', async () => {
    const { user } = await write('G7 | C7');
    await user.click(button('Transpose down a semitone'));
    expect(chords().value).toBe('F#7 | B7');
    await user.click(button('Respell in G♭'));
    expect(chords().value).toBe('Gb7 | Cb7');
    expect(panel().getByLabelText<HTMLSelectElement>('Written in').value).toBe('Gb');
  });

  it('keeps what was typed when the panel closes', async () => {
    const { user } = await write('G7 | C7');
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('region', { name: 'Your charts' })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Song' }));
    await user.click(screen.getByRole('button', { name: 'Charts' }));
    expect(chords().value).toBe('G7 | C7');
    expect(panel().getByText(/Not saved yet/)).toBeTruthy();
  });
});

describe('keeping', () => {
  it('saves, lists the chart under Form and plays it', async () => {
    const { user } = await write('G6 | E7 | Am7 | D7');
    await user.clear(panel().getByLabelText('Name'));
    await user.type(panel().getByLabelText('Name'), 'Thursday');
    await user.click(button('Save'));
    expect(panel().getByText('Saved.')).toBeTruthy();
    const form = screen.getByLabelText<HTMLSelectElement>('Form');
    expect(form.selectedOptions[0]?.textContent).toBe('Thursday');
    expect(
      within(form)
        .getAllByRole('group')
        .map((group) => group.getAttribute('label')),
    ).toEqual(['Your charts', 'Twelve bars', 'Minor', 'Jazz', 'Eight bars', 'Longer']);
    const chart = within(screen.getByRole('region', { name: 'Chart' }));
    expect(chart.getAllByRole('listitem').map((bar) => bar.getAttribute('aria-label'))).toEqual([
      'Bar 1, G6',
      'Bar 2, E7',
      'Bar 3, Am7',
      'Bar 4, D7',
    ]);
  });

  it('offers the key it is written in where the song is in another', async () => {
    const { session, user } = await write('G7 | C7');
    await user.click(button('Save'));
    await user.selectOptions(screen.getByLabelText('Song key'), 'A');
    await user.click(button('Play it in G, not in A'));
    expect(session.store.getState().tune.chart.tonic).toBe('G');
  });

  it('has its key spelled among the keys of songs as it is written', async () => {
    const { user } = await write('Key: Abm\nAbm7 | Dbm7 | Fb | Eb7');
    await user.click(button('Save'));
    const keys = screen.getByLabelText<HTMLSelectElement>('Song key');
    expect(keys.selectedOptions[0]?.textContent).toBe('A♭ minor');
  });

  it('offers the key its chords speak for, where another is chosen', async () => {
    const { user } = await write('Am | Dm | E7 | Am');
    await user.click(button('Write it in A minor'));
    expect(panel().getByLabelText<HTMLSelectElement>('Mode').value).toBe('minor');
    expect(panel().queryByText(/These chords look like/)).toBeNull();
  });

  it('deletes without asking and brings it back', async () => {
    const { session, user } = await write('G7 | C7');
    await user.click(button('Save'));
    await user.click(button('Delete'));
    expect(session.store.getState().ownCharts).toEqual([]);
    expect(panel().getByText(/is deleted/)).toBeTruthy();
    expect(document.activeElement).toBe(button('Bring it back'));
    await user.keyboard('{Enter}');
    expect(chords().value).toBe('G7 | C7');
    expect(session.store.getState().ownCharts).toHaveLength(1);
  });

  it('opens the chart that is played', async () => {
    const { session, user } = await write('G7 | C7');
    await user.click(button('Save'));
    await user.click(button('New'));
    await user.click(chords());
    await user.paste('D7');
    await user.click(button('Save'));
    await user.selectOptions(panel().getByLabelText('Open chart'), 'Chart');
    expect(chords().value).toBe('G7 | C7');
    await user.click(button('Play this chart'));
    expect(session.store.getState().tune.chart.bars).toHaveLength(2);
  });
});
