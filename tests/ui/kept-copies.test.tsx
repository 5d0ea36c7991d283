import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const LOST = '{"version":1,"harpKey":"lost"}';

const openCare = async () => {
  const page = openPage(LOST);
  await page.user.click(screen.getByRole('button', { name: 'Help' }));
  await page.user.click(screen.getByRole('button', { name: 'Care' }));
  return page;
};

describe('kept copies, under Care', () => {
  it('are shown, copied, saved as a file and deleted', async () => {
    const { user, takeAway, storage } = await openCare();
    expect([...storage.items.keys()]).toContain('combshed.settings.unread.1');
    await user.click(screen.getByRole('button', { name: 'See Settings, copy 1' }));
    expect(screen.getByLabelText<HTMLTextAreaElement>('Settings, copy 1').value).toBe(LOST);
    await user.click(screen.getByRole('button', { name: 'Copy the text' }));
    expect(await navigator.clipboard.readText()).toBe(LOST);
    await user.click(screen.getByRole('button', { name: 'Save Settings, copy 1 as file' }));
    expect(await screen.findByText('Handed over as combshed-settings-unread-1.txt.')).toBeTruthy();
    expect(new TextDecoder().decode(Uint8Array.from(takeAway.files[0]?.bytes ?? []))).toBe(LOST);
    await user.click(screen.getByRole('button', { name: 'Delete Settings, copy 1' }));
    expect([...storage.items.keys()]).not.toContain('combshed.settings.unread.1');
    expect(screen.getByText(/There are none/)).toBeTruthy();
  });

  it('make room for what waits when they are deleted', async () => {
    const { user, storage, session } = await openCare();
    storage.capacity = 120;
    act(() => session.commands.nudgeTempo(2));
    expect(screen.getByText(/storage for this page is full/)).toBeTruthy();
    storage.capacity = 10_000;
    await user.click(screen.getByRole('button', { name: 'Delete Settings, copy 1' }));
    expect(storage.items.get('combshed.settings')).toMatch(/"tempo":106/);
    expect(screen.queryByText(/storage for this page is full/)).toBeNull();
  });

  it('are not there for a stranger', async () => {
    const { user } = openPage();
    await user.click(screen.getByRole('button', { name: 'Help' }));
    await user.click(screen.getByRole('button', { name: 'Care' }));
    const care = within(screen.getByRole('region', { name: 'Care' }));
    expect(care.getByText(/There are none/)).toBeTruthy();
  });
});
