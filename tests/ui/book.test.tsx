import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openBook = async () => {
  const page = openPage();
  await page.user.click(screen.getByRole('button', { name: 'Book' }));
  return page;
};

const keep = async (user: Awaited<ReturnType<typeof openBook>>['user'], name: string) => {
  await user.type(screen.getByLabelText('Keep as a new song called'), name);
  await user.click(screen.getByRole('button', { name: 'Keep song' }));
};

describe('the book', () => {
  it('keeps a song by name, says when the stand has moved on, and goes back', async () => {
    const { user, session } = await openBook();
    await keep(user, 'Wet Boots');
    expect(screen.getByText(', as it is kept.')).toBeTruthy();
    session.commands.typeTempo('132');
    expect(await screen.findByText(', changed since it was kept.')).toBeTruthy();
    await user.click(screen.getByRole('button', { name: 'Back to how it was kept' }));
    expect(session.store.getState().settings.tempo).toBe(104);
  });

  it('takes a name for the song where none is typed', async () => {
    const { user } = await openBook();
    await user.click(screen.getByRole('button', { name: 'Keep song' }));
    expect(screen.getByRole('button', { name: 'Put Shuffle in G on the stand' })).toBeTruthy();
  });

  it('shows the first of many songs, and more when asked', async () => {
    const { user, session } = await openBook();
    for (let i = 0; i < 26; i += 1) session.commands.keepSong(`Song ${i}`);
    const more = await screen.findByRole('button', { name: 'Show more (2)' });
    expect(screen.queryByRole('button', { name: 'Put Song 25 on the stand' })).toBeNull();
    await user.click(more);
    expect(screen.getByRole('button', { name: 'Put Song 25 on the stand' })).toBeTruthy();
  });

  it('keeps notes and tags when their field is left', async () => {
    const { user, session } = await openBook();
    await keep(user, 'Wet Boots');
    await user.click(screen.getByRole('button', { name: 'More about Wet Boots' }));
    await user.type(screen.getByLabelText('Notes'), 'Count it off loudly');
    await user.type(screen.getByLabelText('Tags, with commas between'), 'opener, slow');
    await user.tab();
    expect(session.store.getState().book.songs[0]).toMatchObject({
      words: 'Count it off loudly',
      tags: ['opener', 'slow'],
    });
  });

  it('makes a set, orders it by buttons, and shows on the stand what comes next and on which harp', async () => {
    const { user, session } = await openBook();
    await keep(user, 'Wet Boots');
    session.commands.chooseHarpKey(session.store.getState().tune.chart.key);
    await keep(user, 'Ferry at Noon');
    await user.click(screen.getByRole('button', { name: 'Sets' }));
    await user.click(screen.getByRole('button', { name: 'New set' }));
    await user.click(screen.getByRole('button', { name: 'Add all 2 songs' }));
    expect(screen.queryByRole('button', { name: /^Add (all|the other)/ })).toBeNull();
    await user.click(screen.getByRole('button', { name: 'Take Ferry at Noon out of the set' }));
    await user.selectOptions(screen.getByLabelText('Add to the set'), 'Ferry at Noon');
    await user.click(screen.getByRole('button', { name: 'Move Ferry at Noon up' }));
    await user.click(screen.getByRole('button', { name: 'Play the set' }));
    const sign = screen.getByRole('region', { name: 'Set' });
    expect(sign.textContent).toMatch(/1 of 2 Ferry at Noon Next: Wet Boots, C harp/);
    await user.click(screen.getByRole('button', { name: 'Next song of the set' }));
    expect(within(sign).getByText(/The last song of the set/)).toBeTruthy();
    await user.keyboard('b');
    expect(within(sign).getByText('Ferry at Noon')).toBeTruthy();
  });

  it('prints a set with its harps, and the song again after that', async () => {
    const { user, session } = await openBook();
    await keep(user, 'Wet Boots');
    session.commands.newSet('Village hall');
    const { sets, songs } = session.store.getState().book;
    for (const set of sets)
      session.commands.keepSet({ ...set, entries: [{ song: songs[0]?.id ?? '', talk: 0 }] });
    await user.click(screen.getByRole('button', { name: 'Sets' }));
    const print = vi.fn(() => window.dispatchEvent(new Event('beforeprint')));
    Object.assign(window, { print });
    await user.click(screen.getByRole('button', { name: 'Print the set' }));
    expect(print).toHaveBeenCalledOnce();
    const paper = await screen.findByRole('article', { name: 'The set on paper', hidden: true });
    expect(paper.textContent).toMatch(/Village hall.*Wet Boots.*C harp, 2nd position.*G7/);
    window.dispatchEvent(new Event('afterprint'));
    expect(session.store.getState().book.paper).toBeNull();
  });
});
