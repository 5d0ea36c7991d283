import { act, cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import type { Settings } from '../../src/core/settings/settings';
import { heardNote } from '../helpers/heard-note';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const open = async (settings: Partial<Settings> = {}) => {
  const page = openPage(storableSettings({ ...DEFAULT_SETTINGS, ...settings }));
  await page.user.click(screen.getByRole('button', { name: 'Stage' }));
  await stage();
  return page;
};
/** Its file is fetched when it is first wanted, which may take a while on a machine at work. */
const stage = () => screen.findByRole('region', { name: 'Stage' }, { timeout: 20_000 });
const article = (name: string) => within(screen.getByRole('article', { name }));
const inBars = (countInBars: 0 | 1): Pick<Settings, 'plan'> => ({
  plan: { ...DEFAULT_SETTINGS.plan, countInBars },
});

describe('the way to Stage and back', () => {
  it('opens by the button, is left by Escape, and the focus returns', async () => {
    const { user } = await open();
    expect(document.activeElement).toBe(await stage());
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('region', { name: 'Stage' })).toBeNull();
    expect(document.activeElement).toBe(screen.getByRole('button', { name: 'Stage' }));
  });

  it('opens and is left by the key f, but not while something is typed', async () => {
    const { user } = openPage();
    await user.keyboard('f');
    await stage();
    await user.keyboard('f');
    expect(screen.queryByRole('region', { name: 'Stage' })).toBeNull();
    await user.type(screen.getByLabelText('Tempo'), 'f');
    expect(screen.queryByRole('region', { name: 'Stage' })).toBeNull();
  });

  it('is left by its own button', async () => {
    const { user } = await open();
    await user.click(screen.getByRole('button', { name: 'Leave Stage' }));
    expect(screen.queryByRole('region', { name: 'Stage' })).toBeNull();
  });

  it('plays and stops by space, wherever the focus is', async () => {
    const { band, user } = await open();
    await user.keyboard(' ');
    expect(band.asked).toEqual(['play from 0']);
    screen.getByRole('button', { name: 'Leave Stage' }).focus();
    await user.keyboard(' ');
    expect(band.asked).toEqual(['play from 0', 'stop']);
    expect(screen.getByRole('region', { name: 'Stage' })).toBeTruthy();
  });

  it('counts beats only while it plays: a stop empties them, and the way to the next chord is whole again', async () => {
    const { band, user } = await open(inBars(0));
    const counted = () => document.querySelectorAll('.stage-beats [data-on="true"]').length;
    await user.keyboard(' ');
    act(() => band.hear(0, 0, 960));
    await waitFor(() =>
      expect([counted(), screen.getByText(/^in \d beat/).textContent]).toEqual([1, 'in 2 beats']),
    );
    await user.keyboard(' ');
    expect([counted(), screen.getByText(/^in \d beat/).textContent]).toEqual([0, 'in 4 beats']);
  });

  it('shows of a form with many chords what is around the bar being heard', async () => {
    const { band, user } = await open({ ...inBars(0), formId: 'strains' });
    const lines = () =>
      [...document.querySelectorAll('.strip-line')].map((line) => line.getAttribute('aria-label'));
    expect(document.querySelectorAll('.strip-line > li').length).toBeLessThanOrEqual(24);
    expect(lines()[0]).toBe('Line 1');
    await user.keyboard(' ');
    act(() => band.hear(0, 59));
    expect(document.querySelector('.strip-line [aria-current]')?.getAttribute('aria-label')).toMatch(
      /^Bars? .*60/,
    );
    expect([lines().length < 15, lines().at(-1)]).toEqual([true, 'Line 15']);
  });

  it('announces what the stand announces, where that is asked for', async () => {
    const { band, user } = await open({ announcements: 'chords', ...inBars(0) });
    await user.keyboard(' ');
    act(() => band.hear(0, 0));
    const live = screen.getByRole('status', { name: 'Announcements' });
    expect(live.textContent).toMatch(/Chorus 1, G7$/);
    act(() => band.hear(0, 1));
    expect(live.textContent).toBe('C7');
  });

  it('says what there is to say, as the stand does', async () => {
    const { band } = await open();
    act(() => band.report({ kind: 'failed', why: 'device', detail: '' }));
    expect(within(await stage()).getByText(/sound output could not be opened/)).toBeTruthy();
  });
});

describe('what Stage shows', () => {
  it('lists the tones of the chord with degree, note and holes, octave by octave', async () => {
    await open();
    const cells = within(article('Now').getByRole('row', { name: /^♭7/ }))
      .getAllByRole('cell')
      .map(({ textContent }) => textContent);
    // F on a C harp: draw 2 bent two semitones, draw 5, draw 9 (the standard tuning's published note table).
    expect(cells).toEqual(['2↓//draw 2, bent two semitones', '5↓draw 5', '9↓draw 9']);
  });

  it('tells the next chord, how far it is, and what moves', async () => {
    const { band, user } = await open(inBars(0));
    await user.keyboard(' ');
    act(() => band.hear(0, 2));
    expect(article('Next').getByText(/in 8 beats/)).toBeTruthy();
    expect(article('Next').getByText('3 falls to ♭7')).toBeTruthy();
  });

  it('marks the bar in the form, bars of one chord together', async () => {
    const { band, user } = await open(inBars(0));
    await user.keyboard(' ');
    act(() => band.hear(1, 5));
    const now = within(await stage()).getByRole('listitem', { current: true });
    expect(now.getAttribute('aria-label')).toBe('Bars 5 to 6, C7');
    expect(screen.getByText('Chorus 2')).toBeTruthy();
    expect(screen.getByText('bar 6 of 12')).toBeTruthy();
  });

  it('counts in large, and names the chord that comes', async () => {
    const { band, user } = await open(inBars(1));
    await user.keyboard(' ');
    act(() => band.hear(0, 0));
    await waitFor(() => expect(document.querySelector('.stage .count-number')?.textContent).toBe('1'));
    expect(article('Next').getByText(/in 8 beats/)).toBeTruthy();
  });

  it('says whose turn it is, with the call over note values', async () => {
    const { band, user } = await open({ ...inBars(0), trade: { on: true, calls: '4:h -4:q 5:e 5:e | 4:w' } });
    await user.keyboard(' ');
    act(() => band.hear(0, 1));
    const sign = within(screen.getByRole('region', { name: 'Call and answer' }));
    expect(sign.getByText('Listen')).toBeTruthy();
    const bars = [...document.querySelectorAll('.stage .call-bar')];
    expect(
      bars.map((bar) => [...bar.querySelectorAll('.call-note > text')].map((hole) => hole.textContent)),
    ).toEqual([['4↑', '4↓', '5↑', '5↑'], ['4↑']]);
    await waitFor(() => expect(document.querySelector('.stage .ring text')?.textContent).toBe('4'));
    act(() => band.hear(0, 2));
    expect(sign.getByText('Your turn')).toBeTruthy();
  });

  it('names the harp to pick up next', async () => {
    const { band, user } = await open({
      plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0, keys: { kind: 'fourths' } },
    });
    await user.keyboard(' ');
    act(() => band.hear(0, 3));
    expect(article('Next').getByText('F harp')).toBeTruthy();
  });
});

describe('a warm-up', () => {
  const holdTone = async (page: ReturnType<typeof openPage>): Promise<void> => {
    act(() => page.session.commands.startWarmUp());
    await act(async () => page.session.commands.skipWarmUpStep());
    act(() => page.band.hear(1, 0));
  };

  it('shows the one note to play, and lights it on the map', async () => {
    const page = await open();
    await holdTone(page);
    const sign = within(screen.getByRole('region', { name: 'Warm-up' }));
    expect(sign.getByText(/^Hold/).textContent).toBe('Hold1↓draw 1');
    expect(
      [...document.querySelectorAll('.stage [data-lit="true"]')].map((pill) =>
        pill.getAttribute('data-sound'),
      ),
    ).toEqual(['1D']);
  });

  it('shortens the chart of a drill, on the stand too', async () => {
    const page = openPage();
    await holdTone(page);
    const chart = within(screen.getByRole('region', { name: 'Chart' }));
    expect(chart.getAllByRole('listitem')).toHaveLength(1);
    expect(chart.getByRole('listitem').getAttribute('aria-label')).toMatch(/^G7, \d\d bars$/);
  });
});

describe('what was heard, on Stage', () => {
  const row = () => document.querySelector('.stage .stage-heard');

  it('has its row while the microphone listens, and one sentence in it after each chorus', async () => {
    const { session, band, microphone } = await open(inBars(1));
    expect(row()).toBeNull();
    await act(async () => {
      await session.commands.listenToMe();
      await session.commands.play();
    });
    expect(row()?.textContent).toBe('');
    act(() => band.hear(1, 0));
    const { to, ...note } = heardNote(['4D', 0.1, 0.5]);
    act(() => {
      microphone.hear({ notes: [{ ...note, to: null }] });
      microphone.hear({ notes: [{ ...note, to }] });
      band.hear(2, 0);
    });
    expect(row()?.textContent).toMatch(/^Chorus 1: .+\.$/);
    act(() => session.commands.stopListening());
    expect(row()).toBeNull();
  });
});
