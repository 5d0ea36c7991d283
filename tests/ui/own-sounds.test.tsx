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
  const sound = (part: string) => screen.getByLabelText<HTMLSelectElement>(`${part} sound`);
  const optionsOf = (part: string) => [...sound(part).options].map(({ text }) => text);
  return { ...opened, group, load, click, sound, optionsOf };
};

describe('your own sounds', () => {
  it('says what can be loaded while there is nothing', async () => {
    const { group } = await openPanel();
    expect(group.getByText(/General MIDI instruments of a SoundFont/)).toBeTruthy();
    expect(group.getByRole('button', { name: 'Load a SoundFont' })).toBeTruthy();
  });

  it('shows name and size, and plays every part it can from the file', async () => {
    const { group, load, sound, optionsOf } = await openPanel();
    expect(optionsOf('Drums')).toEqual(['Recorded', 'Computed']);
    expect(screen.queryByLabelText('Harp sound')).toBeNull();
    await load();
    expect(await group.findByText('hall.sf2')).toBeTruthy();
    expect(group.getByText(/5 bytes/)).toBeTruthy();
    expect(group.getByText('Kept in this browser until you forget it.')).toBeTruthy();
    expect(['Drums', 'Bass', 'Chords'].map((part) => sound(part).value)).toEqual(['own', 'own', 'own']);
    expect(optionsOf('Bass')).toEqual(['Recorded', 'Computed', 'Your own file']);
    expect(screen.queryByLabelText('Harp sound')).toBeNull();
  });

  it('lets the harp play from a file that has one', async () => {
    const { load, ownSounds, optionsOf } = await openPanel();
    ownSounds.answer = { kind: 'opened', voices: ['piano', 'harmonica'] };
    await load();
    expect(optionsOf('Harp')).toEqual(['Computed', 'Your own file']);
    expect(optionsOf('Drums')).toEqual(['Recorded', 'Computed']);
  });

  it('tells where the file lacks the chosen instrument', async () => {
    const { load, user } = await openPanel();
    await load();
    await user.selectOptions(screen.getByLabelText('Chords by'), 'Guitar');
    expect(screen.getByText('Your file has no guitar: the computed one plays.')).toBeTruthy();
  });

  it('chooses the sounds of a part, and forgets the file', async () => {
    const { group, load, click, sound, user, band } = await openPanel();
    await load();
    await group.findByText('hall.sf2');
    await user.selectOptions(sound('Bass'), 'Computed');
    expect(band.sounds.at(-1)?.own?.parts).toEqual(['drums', 'chords']);
    expect(sound('Bass').value).toBe('computed');
    await click('Forget this file');
    await waitFor(() => expect(group.queryByText('hall.sf2')).toBeNull());
    expect(sound('Drums').value).toBe('recorded');
    expect(sound('Bass').value).toBe('computed');
    expect(group.getByRole('button', { name: 'Load a SoundFont' })).toBeTruthy();
  });

  it('says aloud why a file is refused', async () => {
    const { group, load, ownSounds } = await openPanel();
    ownSounds.answer = { kind: 'refused', why: { kind: 'other' } };
    await load('notes.sf2');
    expect((await group.findByRole('alert')).textContent).toMatch(/“notes\.sf2” is not a SoundFont/);
  });

  it('says when a file is only there for this visit', async () => {
    const { group, load, ownSounds } = await openPanel();
    ownSounds.refuse = { kind: 'full' };
    await load();
    expect(await group.findByText('At hand until you close the page.')).toBeTruthy();
    expect((await group.findByRole('alert')).textContent).toMatch(/storage for this page is full/);
  });
});
