import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const card = (name: string) => within(screen.getByRole('article', { name }));

describe('plain words', () => {
  it('say what is safe, what leans and where it resolves, and name no degree on the stand', async () => {
    const { user } = openPage({ version: 1 });
    expect(card('Now').queryByRole('rowheader', { name: 'R G' })).not.toBeNull();
    await user.click(screen.getByRole('button', { name: 'Harp' }));
    await user.click(screen.getByRole('checkbox', { name: 'Plain words' }));
    const safe = card('Now').getByRole('rowheader', { name: 'Safe now' }).closest('tr');
    expect(safe?.textContent).toContain('draw 2');
    expect(card('Now').getByRole('rowheader', { name: 'Leans well' })).toBeTruthy();
    expect(card('Next').getByRole('rowheader', { name: 'Safe next' })).toBeTruthy();
    expect(card('Next').getByText(/Resolves to:/).textContent).toContain('→');
    expect(document.querySelectorAll('.stand .degree, .stand .pill b')).toHaveLength(0);
    const map = within(screen.getByRole('region', { name: 'Harp map' }));
    expect(map.getByRole('button', { name: 'draw 2: G, safe' })).toBeTruthy();
    expect(map.getByRole('button', { name: 'draw 5: F, leans well' })).toBeTruthy();
  });

  it('are what the legend explains in place of degrees', async () => {
    const { user } = openPage({ version: 1, plainWords: true });
    await user.click(screen.getByRole('button', { name: 'Help' }));
    await user.click(screen.getByRole('button', { name: 'Signs' }));
    const signs = within(screen.getByRole('region', { name: 'Signs' }));
    expect(signs.getByRole('heading', { name: 'Plain words' })).toBeTruthy();
    expect(signs.queryByRole('heading', { name: 'Tones of a chord' })).toBeNull();
    expect(signs.getByText('Resolves to').closest('div')?.textContent).toContain('next chord');
  });
});

describe('beside tab', () => {
  it('stand note and degree where tab stands alone, once they are asked for', async () => {
    const { session } = openPage({
      version: 1,
      line: { kind: 'guide tones', pace: 1, taste: 'even', seed: 0, heard: false },
    });
    const bar = () =>
      screen.getByRole('button', { name: /^Bar 1, G7/ }).querySelector('.line-tab')?.textContent ?? '';
    expect(bar()).not.toMatch(/[A-G]/);
    session.commands.choose({ besideTab: 'both' });
    await expect.poll(bar).toMatch(/ [A-G]♭? (3|♭7)/);
    session.commands.choose({ plainWords: true });
    await expect.poll(bar).toMatch(/ [A-G]♭?$/);
  });
});
