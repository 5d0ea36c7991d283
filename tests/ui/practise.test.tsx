import { act, cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openPractise = async () => {
  const opened = openPage();
  await opened.user.click(screen.getByRole('button', { name: 'Practise' }));
  return {
    ...opened,
    panel: within(screen.getByRole('region', { name: 'Practise' })),
    state: opened.session.store.getState,
  };
};

const barText = (number: number): string =>
  within(screen.getByRole('region', { name: 'Chart' })).getAllByRole('listitem')[number - 1]?.textContent ??
  '';

describe('a line through the changes', () => {
  it('stands under every bar as tab, and can be heard over the band', async () => {
    const { band, panel, user } = await openPractise();
    await user.selectOptions(panel.getByLabelText('Line'), 'guide tones');
    for (let bar = 1; bar <= 12; bar += 1) expect(barText(bar)).toMatch(/\d[↑↓]/);
    await user.click(panel.getByLabelText('Hear it over the band'));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    const leads = band.programs.at(-1)?.leads?.[7]?.[0] ?? [];
    expect(leads.length).toBeGreaterThan(10);
  });

  it('is another good one on request, and the smoothest again', async () => {
    const { panel, user } = await openPractise();
    await user.selectOptions(panel.getByLabelText('Line'), 'arpeggio');
    const tabs = () => Array.from({ length: 12 }, (_, i) => barText(i + 1)).join();
    const smoothest = tabs();
    await user.click(panel.getByRole('button', { name: 'Another line' }));
    expect(tabs()).not.toBe(smoothest);
    await user.click(panel.getByRole('button', { name: 'The smoothest' }));
    expect(tabs()).toBe(smoothest);
  });
});

describe('call and answer', () => {
  it('says whose turn it is, bar by bar', async () => {
    const { band, panel, user } = await openPractise();
    await user.click(panel.getByLabelText('Trade with the harp voice'));
    await user.click(screen.getByRole('button', { name: 'Play' }));
    const sign = () => within(screen.getByRole('region', { name: 'Call and answer' }));
    act(() => band.hear(1, 0));
    expect(sign().getByText('Listen')).toBeTruthy();
    act(() => band.hear(1, 2));
    expect(sign().getByText('Your turn')).toBeTruthy();
    expect(band.programs.at(-1)?.leads?.[7]).toHaveLength(6);
  });

  it('takes typed calls and says where one is not understood', async () => {
    const { band, panel, user } = await openPractise();
    await user.click(panel.getByLabelText('Trade with the harp voice'));
    await user.type(panel.getByLabelText(/Your own calls/), '-2:q -3:e xx 4:h');
    expect(panel.getByText(/column 11/).textContent).toContain('xx');
    await user.click(screen.getByRole('button', { name: 'Play' }));
    const pitches = (band.programs.at(-1)?.leads?.[7]?.[0] ?? []).slice(0, 3).map(({ pitch }) => pitch);
    expect(pitches).toEqual([67, 71, 72]);
  });

  it('has the call in words for who reads by ear: at rest before it sounds, from its first bar, and while answering', async () => {
    const { band, user } = openPage({ version: 1, trade: { on: true, calls: '4:h -4:q 5:e 5:e | 4:w' } });
    await user.click(screen.getByRole('button', { name: 'Play' }));
    await user.click(screen.getByRole('button', { name: 'Stop' }));
    const sign = () => screen.getByRole('region', { name: 'Call and answer' });
    const words =
      'Bar 1: hole 4 blow, half; hole 4 draw, quarter; hole 5 blow, eighth; hole 5 blow, eighth. Bar 2: hole 4 blow, whole.';
    /** What a screen reader has of the sign: its drawing is not for it. */
    const read = (): readonly (string | null)[] =>
      [...sign().querySelectorAll('p')]
        .filter((each) => each.closest('[aria-hidden="true"]') === null)
        .map((each) => each.textContent);
    expect(read()).toEqual([words]);
    await user.click(screen.getByRole('button', { name: 'Play' }));
    act(() => band.hear(1, 0));
    expect(read()).toEqual([words]);
    expect(sign().querySelector('.call')?.closest('[aria-hidden="true"]')).not.toBeNull();
    act(() => band.hear(1, 2));
    expect([sign().getAttribute('aria-live'), read()]).toEqual(['polite', [words]]);
  });

  it('says what of a call the harp in hand does not have', async () => {
    const { panel, user } = await openPractise();
    await user.click(panel.getByLabelText('Trade with the harp voice'));
    await user.type(panel.getByLabelText(/Your own calls/), '-12:q 4:h');
    expect(panel.getByText(/The harp in hand does not have 12↓; it stays silent/)).toBeTruthy();
  });
});

describe('the notes of a call', () => {
  it('are lit on the map and named large as they come, and at the same place of the answer', async () => {
    const { band, user } = openPage({ version: 1, trade: { on: true, calls: '-2:q (4 5):h -3:q' } });
    await user.click(screen.getByRole('button', { name: 'Play' }));
    const lit = () =>
      [...document.querySelectorAll('.map .pill[data-lit="true"]')].map((pill) =>
        pill.getAttribute('data-sound'),
      );
    const large = () => document.querySelector('.trading .asked')?.textContent;
    act(() => band.hear(1, 0));
    await waitFor(() => expect(lit()).toEqual(['2D']));
    expect(large()).toBe('2↓');
    act(() => band.hear(1, 0, 480));
    await waitFor(() => expect(lit()).toEqual(['4B', '5B']));
    expect(large()).toBe('(4↑ 5↑)');
    act(() => band.hear(1, 1));
    await waitFor(() => expect(lit()).toEqual([]));
    expect(large()).toBe('');
    act(() => band.hear(1, 2));
    await waitFor(() => expect(lit()).toEqual(['2D']));
    await user.click(screen.getByRole('button', { name: 'Stop' }));
    await waitFor(() => expect(lit()).toEqual([]));
  });
});

describe('the warm-up', () => {
  it('says how long it takes and what it is made of, worked out step by step after the panel is drawn', async () => {
    const { panel } = await openPractise();
    expect(panel.queryByText(/^About/)).toBeNull();
    const about = await panel.findByText(/^About \d+ minutes/);
    expect(about.textContent).toMatch(/long tones.*chord-tone climbs.*trading, with rests between/);
  });

  it('gives its cautions before it starts, then shows each step', async () => {
    const { panel, user, state } = await openPractise();
    expect(panel.getByText(/light-headed/)).toBeTruthy();
    await user.click(panel.getByRole('button', { name: 'Start the warm-up' }));
    const sign = within(screen.getByRole('region', { name: 'Warm-up' }));
    expect(sign.getByText('Breathe')).toBeTruthy();
    await user.click(sign.getByRole('button', { name: 'Next step' }));
    expect(sign.getByText(/Step 2 of/)).toBeTruthy();
    await user.click(sign.getByRole('button', { name: 'End the warm-up' }));
    expect(state().warmUp).toBeNull();
  });
});
