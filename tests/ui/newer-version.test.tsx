import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import type { Keeping } from '../../src/offline/offline';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const NEWER = { keeping: 'kept', newer: true } as const;
const OFFER = 'A new version of Combshed is ready.';

describe('a newer version', () => {
  it('is offered in one sentence, and taken at once while nothing plays', async () => {
    const { offline, user } = openPage();
    expect(screen.queryByText(OFFER)).toBeNull();
    act(() => offline.report(NEWER));
    const told = screen.getAllByRole('status').filter(({ textContent }) => textContent?.includes(OFFER));
    expect(told).toHaveLength(1);
    expect(offline.taken()).toBe(0);
    await user.click(screen.getByRole('button', { name: 'Use the new version' }));
    expect(offline.taken()).toBeGreaterThan(0);
  });

  it.each(['playing', 'loading', 'paused', 'interrupted'] as const)(
    'waits while the band is %s',
    async (kind) => {
      const { offline, user, band } = openPage();
      act(() => band.report({ kind }));
      act(() => offline.report(NEWER));
      await user.click(screen.getByRole('button', { name: 'Use the new version' }));
      expect(offline.taken()).toBe(0);
      expect(screen.getByText(/^The new version comes as soon as the music has stopped/)).toBeTruthy();
      act(() => band.report({ kind: 'ready' }));
      expect(offline.taken()).toBeGreaterThan(0);
    },
  );

  it('is never taken unasked, and can be put off', async () => {
    const { offline, user, band } = openPage();
    act(() => offline.report(NEWER));
    act(() => band.report({ kind: 'playing' }));
    act(() => band.report({ kind: 'ready' }));
    await user.click(screen.getByRole('button', { name: 'Later' }));
    expect(screen.queryByText(OFFER)).toBeNull();
    expect(offline.taken()).toBe(0);
  });
});

describe('the Care panel', () => {
  it.each([
    ['fetching', /^Being kept for offline use/],
    ['kept', /^Kept for offline use/],
    ['insecure', /^Not kept for offline use: browsers allow that only for https/],
    ['refused', /^Not kept for offline use: this browser does not allow it/],
    ['failed', /^Not kept for offline use: a part could not be fetched/],
  ] as const satisfies readonly (readonly [Keeping, RegExp])[])(
    'tells whether the page is kept: %s',
    async (keeping, words) => {
      const { offline, user } = openPage();
      await user.click(screen.getByRole('button', { name: 'Help' }));
      await user.click(screen.getByRole('button', { name: 'Care' }));
      act(() => offline.report({ keeping, newer: false }));
      expect(within(screen.getByRole('region', { name: 'Care' })).getByText(words)).toBeTruthy();
    },
  );
});
