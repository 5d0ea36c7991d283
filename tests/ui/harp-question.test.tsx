// @vitest-environment happy-dom
import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { asPitchClass } from '../../src/core/theory/units';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const question = () => screen.queryByRole('region', { name: 'Which harp have you got?' });
const press = (name: string) =>
  within(screen.getByRole('group', { name: /Which harp/ })).getByRole('button', { name });

describe('the question of a first visit', () => {
  it('puts the harps named into the case, takes the first in hand, and is never asked again', async () => {
    const { session, storage, user, page } = openPage();
    await user.click(press('A harp'));
    await user.click(press('D harp'));
    const { settings, harpCase } = session.store.getState();
    expect(settings.harpKey).toBe(asPitchClass(9));
    expect(harpCase.map(({ key }) => key)).toEqual([9, 2]);
    expect(press('D harp').getAttribute('aria-pressed')).toBe('true');
    await user.click(press('D harp'));
    expect(session.store.getState().harpCase.map(({ key }) => key)).toEqual([9]);
    await user.click(screen.getByRole('button', { name: 'Done' }));
    expect(question()).toBeNull();
    page.unmount();
    session.dispose();
    const kept = storage.getItem('combshed.settings');
    expect(kept).not.toBeNull();
    openPage(kept ?? undefined);
    expect(question()).toBeNull();
  });

  it('can be left for later, and then waits under Harp', async () => {
    const { session, user } = openPage();
    await user.click(within(question() as HTMLElement).getByRole('button', { name: 'Ask me later' }));
    expect(question()).toBeNull();
    expect(session.store.getState().settings.askHarp).toBe(false);
  });

  it('is answered by a choice of harp key elsewhere, and is not asked of who has been here before', async () => {
    const { user } = openPage();
    await user.selectOptions(screen.getByRole('combobox', { name: 'Harp key' }), 'F');
    expect(question()).toBeNull();
    cleanup();
    openPage({ version: 1, tempo: 90 });
    expect(question()).toBeNull();
  });

  it('gives the chart its place while the band plays', async () => {
    const { band, user } = openPage();
    expect(question()).not.toBeNull();
    await user.click(screen.getByRole('button', { name: 'Play' }));
    expect(band.status().kind).toBe('playing');
    expect(question()).toBeNull();
  });
});

describe('another harp', () => {
  it('is asked for in words where a song key wants it, until one is taken', async () => {
    const { user } = openPage({ version: 1 });
    await user.selectOptions(screen.getByRole('combobox', { name: 'Song key' }), 'A');
    const said = await screen.findByText('You will need a D harp.');
    expect(said.closest('[role="status"]')).not.toBeNull();
    await user.selectOptions(screen.getByRole('combobox', { name: 'Harp key' }), 'G');
    expect(screen.queryByText(/You will need/)).toBeNull();
  });

  it('is asked for no longer once the choice is taken back', async () => {
    const { user } = openPage({ version: 1 });
    await user.selectOptions(screen.getByRole('combobox', { name: 'Song key' }), 'A');
    expect(await screen.findByText('You will need a D harp.')).not.toBeNull();
    await user.keyboard('{Control>}z{/Control}');
    expect(screen.queryByText(/You will need/)).toBeNull();
  });

  it('stands first in the list where it is in the case', async () => {
    const { session, user } = openPage({ version: 1 });
    await user.selectOptions(screen.getByRole('combobox', { name: 'Harp key' }), 'A');
    const list = () => screen.getByRole('combobox', { name: 'Harp key' });
    expect(within(list()).queryAllByRole('group')).toHaveLength(0);
    const { settings } = session.store.getState();
    const { tuning, intonation, reference, stretch, valved } = settings;
    const low = { id: 'low', name: '', key: asPitchClass(5), octave: -1 };
    const usual = { id: 'a', name: '', key: asPitchClass(9), octave: 0 };
    for (const harp of [low, usual])
      session.commands.keepHarp({ ...harp, tuning, intonation, reference, stretch, valved });
    const groups = await within(list()).findAllByRole('group');
    expect(groups.map((group) => group.getAttribute('label'))).toEqual(['In your case', 'Other harps']);
    expect([...(groups[0]?.children ?? [])].map(({ textContent }) => textContent)).toEqual([
      'Low F harp',
      'A',
    ]);
    await user.selectOptions(list(), 'Low F harp');
    expect(session.store.getState().settings).toMatchObject({ harpKey: 5, harpOctave: -1 });
  });
});
