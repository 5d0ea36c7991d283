import { cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openPanel = async (opened = openPage()) => {
  await opened.user.click(screen.getByRole('button', { name: 'Band' }));
  const group = within(screen.getByRole('group', { name: 'Your own sounds' }));
  const load = (name = 'hall.sf2') =>
    opened.user.upload(group.getByLabelText('SoundFont file'), new File(['bytes'], name));
  const click = (name: string) => opened.user.click(group.getByRole('button', { name }));
  const isOn = (name: string) => (group.getByRole('checkbox', { name }) as HTMLInputElement).checked;
  return { ...opened, group, load, click, isOn };
};

describe('your own sounds', () => {
  it('says what can be loaded while there is nothing', async () => {
    const { group } = await openPanel();
    expect(group.getByText(/General MIDI instruments of a SoundFont/)).toBeTruthy();
    expect(group.queryAllByRole('checkbox')).toEqual([]);
    expect(group.getByRole('button', { name: 'Load a SoundFont' })).toBeTruthy();
  });

  it('shows name, size and the parts that play from a file', async () => {
    const { group, load, isOn } = await openPanel();
    await load();
    expect(await group.findByText('hall.sf2')).toBeTruthy();
    expect(group.getByText(/5 bytes/)).toBeTruthy();
    expect(group.getByText('Kept in this browser until you forget it.')).toBeTruthy();
    expect(['Drums', 'Bass', 'Chords'].map((part) => isOn(`${part} from this file`))).toEqual([
      true,
      true,
      true,
    ]);
    expect(group.queryByRole('checkbox', { name: /Harp/ })).toBeNull();
    expect(group.getByText('Harp: The file has no harmonica: the built-in one plays.')).toBeTruthy();
  });

  it('tells where the file lacks the chosen instrument', async () => {
    const { group, load, user } = await openPanel();
    await load();
    await user.selectOptions(screen.getByLabelText('Chords by'), 'Guitar');
    expect(group.getByText('The file has no guitar: the built-in one plays.')).toBeTruthy();
  });

  it('switches parts, goes back to the built-in voices, and forgets the file', async () => {
    const { group, load, click, isOn, user, band } = await openPanel();
    await load();
    await user.click(await group.findByRole('checkbox', { name: 'Bass from this file' }));
    expect(band.sounds.at(-1)?.own?.parts).toEqual(['drums', 'chords']);
    await click('Back to the built-in voices');
    expect(band.sounds.at(-1)?.own).toBeUndefined();
    expect(isOn('Drums from this file')).toBe(false);
    await click('Forget this file');
    await waitFor(() => expect(group.queryByText('hall.sf2')).toBeNull());
    expect(group.getByRole('button', { name: 'Load a SoundFont' })).toBeTruthy();
  });

  it('says aloud why a file is refused', async () => {
    const { group, load, ownSounds } = await openPanel();
    ownSounds.answer = { kind: 'refused', why: { kind: 'other' } };
    await load('notes.sf2');
    expect((await group.findByRole('alert')).textContent).toMatch(/“notes\.sf2” is not a SoundFont/);
    expect(group.queryAllByRole('checkbox')).toEqual([]);
  });

  it('says when a file is only there for this visit', async () => {
    const { group, load, ownSounds } = await openPanel();
    ownSounds.refuse = { kind: 'full' };
    await load();
    expect(await group.findByText('At hand until you close the page.')).toBeTruthy();
    expect((await group.findByRole('alert')).textContent).toMatch(/storage for this page is full/);
  });
});
