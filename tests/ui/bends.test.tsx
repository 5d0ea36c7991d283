import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { noResults, withTry } from '../../src/core/bends/bend-results';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

/** The kind of the harp in hand at a first visit: a C harp, its reeds by Wikipedia, "Richter-tuned harmonica". */
const C_HARP = '0 0 0,4,7,12,16,19,24,28,31,36 2,7,11,14,17,21,23,26,29,33';
const kept = (sound: string, hits: string) =>
  [...hits].reduce(
    (results, sign) =>
      withTry(results, { exercise: 'hold', hit: sign === '+', cents: null, settling: null, marked: true }),
    noResults(C_HARP, sound),
  );

const openBends = async (...results: readonly ReturnType<typeof kept>[]) => {
  const opened = openPage();
  opened.storage.items.set('combshed.bends', JSON.stringify(results));
  const { user } = opened;
  await user.click(screen.getByRole('button', { name: 'Practise' }));
  await user.click(await screen.findByRole('button', { name: 'Bends' }));
  const panel = within(await screen.findByRole('region', { name: 'Bends' }));
  await panel.findByRole('button', { name: 'Start' });
  return { ...opened, panel };
};

describe('the page for bends', () => {
  it('gives a beginner 4 draw first, three sentences, and any dip; nothing is forced', async () => {
    const { panel, user, session } = await openBends();
    expect(panel.getByText('draw 4, bent one semitone')).toBeTruthy();
    await user.click(panel.getByText('A first bend'));
    expect(panel.getByText(/Do not pull harder/)).toBeTruthy();
    expect(panel.getByText(/a teacher who hears you/)).toBeTruthy();
    await user.click(panel.getByRole('button', { name: /any dip counts/ }));
    expect(panel.getByText('Any dip counts', { selector: '.bend-step' })).toBeTruthy();
    expect(session.store.getState().settings.bends.level).toBe('first');
  });

  it('offers every bend, and for an overblow no slide; starts and stops', async () => {
    const { panel, user } = await openBends();
    const sounds = panel.getByLabelText<HTMLSelectElement>('Sound');
    // Twelve bends, ten overbends, and the one that is given.
    expect(sounds.options).toHaveLength(23);
    await user.selectOptions(sounds, '6OB');
    const exercises = panel.getByLabelText<HTMLSelectElement>('Exercise');
    expect([...exercises.options].map(({ text }) => text)).toEqual(['Hold', 'Hit it cold']);
    await user.click(panel.getByRole('button', { name: 'Start' }));
    expect(panel.getByText('Listen', { selector: '.bend-step' })).toBeTruthy();
    await user.click(panel.getByRole('button', { name: 'Stop' }));
    expect(panel.queryByText('Listen', { selector: '.bend-step' })).toBeNull();
  });

  it('goes back to what is aimed at with Start, which stands below it', async () => {
    const { panel, user } = await openBends();
    const body = panel.getByRole('button', { name: 'Start' }).closest('.panel-body');
    if (body === null) throw new Error('Start stands in no panel');
    body.scrollTop = 240;
    await user.click(panel.getByRole('button', { name: 'Start' }));
    expect(body.scrollTop).toBe(0);
    body.scrollTop = 240;
    await user.click(panel.getByRole('button', { name: 'Stop' }));
    expect(body.scrollTop).toBe(240);
  });

  it('shows what is kept with its numbers, marks it on the harp when it may decide, and deletes it', async () => {
    const { panel, user, session } = await openBends(kept('6OB', '+++++'), kept("4D'", '+----'));
    const row = panel.getByRole('row', { name: /blow 6, overblow/ });
    expect(row.textContent).toContain('steady5 of 5, 5 by your word');
    const map = within(screen.getByRole('region', { name: 'Harp map' }));
    expect(map.queryByRole('button', { name: /by your results/ })).toBeNull();
    await user.click(panel.getByRole('checkbox', { name: 'Let results decide what is in reach' }));
    expect(map.getByRole('button', { name: /^blow 6, overblow.*, steady by your results/ })).toBeTruthy();
    expect(
      map.getByRole('button', { name: /^draw 4, bent one semitone.*, out of reach, not yet by/ }),
    ).toBeTruthy();
    expect(session.store.getState().notices.some(({ text }) => text.includes('left out'))).toBe(true);
    await user.click(panel.getByRole('button', { name: 'Delete the results of blow 6, overblow' }));
    expect(panel.queryByRole('row', { name: /overblow/ })).toBeNull();
    await user.click(panel.getByRole('button', { name: 'Delete all results of this harp' }));
    expect(panel.getByText('Nothing kept yet of this harp.')).toBeTruthy();
  });
});
