import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const help = () => within(screen.getByRole('region', { name: 'Help' }));

describe('Help', () => {
  it('opens at the keys on a question mark, also when it is open already', async () => {
    const { user } = openPage();
    await act(() => user.keyboard('?'));
    expect(help().getAllByRole('heading', { level: 3 })[0]?.textContent).toBe('Shortcuts');
    expect(help().getByText('play and stop')).toBeTruthy();
    await act(() => user.keyboard('?'));
    expect(help().getByText('tap the tempo')).toBeTruthy();
    await user.keyboard('{Escape}');
    expect(screen.queryByRole('region', { name: 'Help' })).toBeNull();
  });

  it('leaves a question mark that is typed to what it is typed in', async () => {
    const { user } = openPage();
    screen.getByLabelText('Harp key').focus();
    await user.keyboard('?');
    expect(screen.queryByRole('region', { name: 'Help' })).toBeNull();
  });

  it('says the version, and fetches the licences when they are wanted', async () => {
    const { user } = openPage();
    await act(() => user.keyboard('?'));
    expect(help().getByText(/^Combshed \d+\.\d+\.\d+$/)).toBeTruthy();
    expect(screen.queryByRole('region', { name: 'Licences' })).toBeNull();
    await user.click(help().getByRole('button', { name: 'Show the licences' }));
    const list = within(await screen.findByRole('region', { name: 'Licences' }));
    for (const name of ['react', 'tone', 'tonal', 'zustand', 'valibot', 'fft.js', 'spessasynth_core'])
      expect(list.getByText(new RegExp(`(^|, )${name} \\d[^,]*(,|:)`))).toBeTruthy();
  });

  it('explains the signs with the sounds of the map itself', async () => {
    const { user, band } = openPage();
    await user.click(screen.getByRole('button', { name: 'Help' }));
    await user.click(screen.getByRole('button', { name: 'Signs' }));
    const signs = within(screen.getByRole('region', { name: 'Signs' }));
    const root = signs.getByRole('button', { name: 'draw 2: G, root of the chord' });
    expect(root.closest('dl > div')?.textContent).toContain('filled: a tone of the chord');
    expect(
      signs.getByRole('button', { name: /bent one semitone: B♭, in the scale, blue note/ }),
    ).toBeTruthy();
    expect(
      signs.getByRole('button', {
        name: /two semitones: F, ♭7 of the chord, blue note of the key, out of reach/,
      }),
    ).toBeTruthy();
    // Wikibooks, "Harmonica/Positions": a C harp in 2nd position plays in G, in 3rd in D.
    expect(signs.getByText('2nd position (cross)').closest('div')?.textContent).toContain('the song is in G');
    expect(signs.getByText('3rd position (slant)').closest('div')?.textContent).toContain('the song is in D');
    await user.click(root);
    // Draw 2 of a C harp is the G above middle C.
    expect(band.asked.filter((each) => each.startsWith('audition'))).toEqual(['audition lead 67']);
  });
});
