import { cleanup, render, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { readChart } from '../../src/core/chart-text/read-chart';
import { findLine } from '../../src/core/lines/lines';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import { App } from '../../src/ui/page/app';
import { fetchEverything } from '../../src/ui/state/fetched';
import { openSession } from '../helpers/fake-session';
import { createFakeStorage } from '../helpers/fake-storage';
import { createFakeTabs } from '../helpers/fake-tabs';
import { openPage } from '../helpers/open-page';

vi.mock('../../src/core/chart-text/read-chart', { spy: true });
vi.mock('../../src/core/lines/lines', { spy: true });

const BAD = 'G7 | X-broken | D7';

beforeEach(async () => {
  await fetchEverything();
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
  const real = await vi.importActual<{ readChart: typeof readChart }>('../../src/core/chart-text/read-chart');
  // The reader is total as far as anybody knows; this stands for the chord that nobody has thought of.
  vi.mocked(readChart).mockImplementation((text, ...others) => {
    if (text.includes('X-broken')) throw new Error('the reader tripped');
    return real.readChart(text, ...others);
  });
});
afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const openTab = (tabs: ReturnType<typeof createFakeTabs>) => {
  const opened = openSession(tabs.open());
  render(<App session={opened.session} />);
  return { ...opened, user: userEvent.setup() };
};

const breakDraft = async ({ user }: ReturnType<typeof openTab>): Promise<void> => {
  await user.click(screen.getByRole('button', { name: 'Song' }));
  await user.click(screen.getByRole('button', { name: 'Charts' }));
  await user.click(screen.getByRole('button', { name: 'New' }));
  await user.click(screen.getByRole('textbox', { name: /Chords|Text|Changes/i }));
  await user.paste(BAD);
};

describe('a draft on which the reader fails', () => {
  it('keeps its text for copying, can be undone, and leaves the transport', async () => {
    const tab = openTab(createFakeTabs());
    await breakDraft(tab);
    const failed = within(screen.getByRole('alert'));
    expect(failed.getByText('What went wrong: the reader tripped')).toBeTruthy();
    expect(failed.getByLabelText<HTMLTextAreaElement>(/its text/).value).toBe(BAD);
    await tab.user.click(failed.getByRole('button', { name: 'Copy the text' }));
    expect(await navigator.clipboard.readText()).toBe(BAD);
    await tab.user.click(screen.getByRole('button', { name: 'Play' }));
    expect(screen.getByRole('button', { name: 'Stop' })).toBeTruthy();
    await tab.user.click(failed.getByRole('button', { name: 'Undo the last change' }));
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('can be left, breaks nothing after a reload, and has a way out there too', async () => {
    const tabs = createFakeTabs(createFakeStorage());
    await breakDraft(openTab(tabs));
    cleanup();
    const { user } = openTab(tabs);
    expect(screen.queryByRole('alert')).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Song' }));
    await user.click(screen.getByRole('button', { name: 'Charts' }));
    expect(screen.queryByRole('alert')).toBeNull();
    await user.selectOptions(screen.getByLabelText('Open chart'), 'Chart (not saved)');
    await user.click(screen.getByRole('button', { name: 'Go on without it' }));
    expect(screen.queryByRole('alert')).toBeNull();
    await user.click(screen.getByRole('button', { name: 'New' }));
    expect(screen.queryByRole('alert')).toBeNull();
  });

  it('does not take the page with it when it is saved and chosen, nor after a reload', () => {
    const tabs = createFakeTabs();
    const one = openSession(tabs.open());
    one.commands.newChart();
    one.commands.editChart({ name: 'Hall', text: BAD });
    one.commands.saveChart();
    expect(one.notices()).toMatch(/could not be worked out, so nothing was changed/);
    expect(one.state().tune.chart.bars).toHaveLength(12);
    const id = one.state().ownCharts[0]?.id ?? '';
    tabs.storage.setItem('combshed.settings', JSON.stringify({ version: 1, formId: id }));
    const two = openTab(tabs);
    expect(two.notices()).toMatch(/The band cannot play “Hall”.*kept as you wrote it/);
    expect(two.state().tune.chart.bars).toHaveLength(12);
    expect(two.state().ownCharts[0]?.text).toBe(BAD);
    two.commands.nudgeTempo(2);
    expect(two.state().settings.tempo).toBe(106);
  });
});

it('says that a line could not be worked out, and shows the rest', () => {
  vi.mocked(findLine).mockImplementation(() => {
    throw new Error('no way through');
  });
  openPage(
    storableSettings({ ...DEFAULT_SETTINGS, line: { ...DEFAULT_SETTINGS.line, kind: 'chord tones' } }),
  );
  expect(screen.getByRole('alert').textContent).toMatch(
    /The line or the calls cannot be shown.*no way through/,
  );
  expect(screen.getByRole('region', { name: 'What fits' })).toBeTruthy();
});
