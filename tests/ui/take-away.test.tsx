import { act, cleanup, screen, waitFor, within } from '@testing-library/react';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { loadExportWork } from '../../src/app/export/export';
import { asPitchClass } from '../../src/core/theory/units';
import { FAKE_ENCODING } from '../helpers/fake-take-away';
import { openPage } from '../helpers/open-page';

// As on a page that has rested: what makes files is here.
await loadExportWork();

afterEach(cleanup);

const openPanel = async (opened = openPage()) => {
  await opened.user.click(screen.getByRole('button', { name: 'Take away' }));
  const panel = within(screen.getByRole('region', { name: 'Take away' }));
  const click = (name: string) => opened.user.click(panel.getByRole('button', { name }));
  const choose = (label: string, text: string) =>
    opened.user.selectOptions(panel.getByLabelText(label), text);
  return { ...opened, panel, click, choose };
};

const fates = ({ takeAway }: ReturnType<typeof openPage>) =>
  takeAway.files.map(({ name, fate }) => `${name} ${fate}`);

describe('what can be taken away', () => {
  it.each([
    ['Save MIDI', 'shuffle-g-104bpm.mid'],
    ['Save audio', 'shuffle-g-104bpm.wav'],
    ['Save lead sheet', 'shuffle-g-104bpm.musicxml'],
  ])('%s hands over %s and says so', async (button, name) => {
    const opened = await openPanel();
    await opened.click(button);
    expect(await opened.panel.findByText(`${name} is in your downloads.`)).toBeTruthy();
    expect(fates(opened)).toEqual([`${name} saved`]);
  });

  it('still prints', async () => {
    const print = vi.fn();
    vi.stubGlobal('print', print);
    const { click } = await openPanel();
    await click('Print');
    expect(print).toHaveBeenCalledOnce();
    vi.unstubAllGlobals();
  });
});

describe('choices', () => {
  it('takes length, form and number of files from the controls', async () => {
    const opened = await openPanel();
    await opened.choose('Choruses', '1');
    await opened.user.click(opened.panel.getByLabelText('With count-in'));
    await opened.user.click(opened.panel.getByLabelText('With ending'));
    await opened.choose('Sample rate', '48 kHz');
    await opened.choose('Bit depth', '24 bit');
    await opened.choose('Files', 'One for each part');
    await opened.click('Save audio');
    await opened.panel.findByText(/3 files are in your downloads/);
    const [request] = opened.takeAway.requests;
    expect(request?.sections.map(({ kind }) => kind)).toEqual(['chorus']);
    expect(request?.sampleRate).toBe(48000);
    expect(
      new DataView(Uint8Array.from(opened.takeAway.files[0]?.bytes ?? []).buffer).getUint16(34, true),
    ).toBe(24);
  });

  // 12 bars of 4 beats at 104 a minute: 27.7 s a chorus, 2.3 s for a bar of count-in, about 3 s for the last chord.
  it('foretells length and size', async () => {
    const { panel, choose } = await openPanel();
    expect(panel.getByText(/^About 1 min 28 s/)).toBeTruthy();
    expect(panel.getByText('About 16 MB. This browser cannot make compressed files.')).toBeTruthy();
    await choose('Choruses', '64');
    expect(panel.getByText(/^About 29 min/)).toBeTruthy();
    expect(panel.getByText(/^About 314 MB/)).toBeTruthy();
  });

  it('offers compressed files only where the browser makes them, and says what they are', async () => {
    const opened = openPage();
    opened.takeAway.encodings = [FAKE_ENCODING];
    const { panel, choose, click } = await openPanel(opened);
    await choose('Kind of file', 'Opus in Ogg, compressed, 128 kbit/s');
    expect(panel.queryByLabelText('Sample rate')).toBeNull();
    expect(panel.getByText('About 1.4 MB.')).toBeTruthy();
    await click('Save audio');
    expect(await panel.findByText('shuffle-g-104bpm.opus is in your downloads.')).toBeTruthy();
  });

  it('follows the plan until something else is chosen', async () => {
    const { panel, session } = await openPanel();
    const choruses = () => panel.getByLabelText<HTMLSelectElement>('Choruses').value;
    const countIn = () => panel.getByLabelText<HTMLInputElement>('With count-in').checked;
    expect([choruses(), countIn()]).toEqual(['3', true]);
    const { plan } = session.store.getState().settings;
    act(() => session.commands.choose({ plan: { ...plan, choruses: 5, countInBars: 0 } }));
    expect([choruses(), countIn()]).toEqual(['5', false]);
  });

  it('speaks of the repeated bars where a range is marked', async () => {
    const { panel, session } = await openPanel();
    act(() => session.commands.repeat({ from: 0, to: 3 }));
    expect(panel.getByLabelText('Times through the repeated bars')).toBeTruthy();
    expect(panel.queryByLabelText('With ending')).toBeNull();
  });
});

describe('long work', () => {
  const begin = async () => {
    const opened = await openPanel();
    opened.takeAway.hold();
    await opened.click('Save audio');
    await waitFor(() => expect(opened.takeAway.requests).toHaveLength(1));
    return opened;
  };

  it('shows how far it is while the page stays usable', async () => {
    const { panel, band, session, user, takeAway } = await begin();
    const bar = panel.getByRole('progressbar', { name: 'Making shuffle-g-104bpm.wav' });
    expect(bar.getAttribute('value')).toBe('0');
    await user.click(screen.getByRole('button', { name: 'Play' }));
    expect(band.asked).toContain('play from 0');
    act(() => session.commands.chooseSongKey(asPitchClass(9)));
    expect(screen.getByText(/Song in/).closest('p')?.textContent).toContain('Song in A');
    takeAway.letGo();
    expect(await panel.findByText('shuffle-g-104bpm.wav is in your downloads.')).toBeTruthy();
    expect(panel.queryByRole('progressbar')).toBeNull();
  });

  it('goes on while the panel is closed', async () => {
    const opened = await begin();
    await opened.click('Close');
    opened.takeAway.letGo();
    await waitFor(() => expect(fates(opened)).toEqual(['shuffle-g-104bpm.wav saved']));
    const { panel } = await openPanel(opened);
    expect(panel.getByText('shuffle-g-104bpm.wav is in your downloads.')).toBeTruthy();
  });

  it('is cancelled by its button', async () => {
    const { panel, click } = await begin();
    await click('Cancel');
    expect(await panel.findByText(/^Cancelled\./)).toBeTruthy();
    expect(panel.queryByRole('button', { name: 'Cancel' })).toBeNull();
  });

  it('answers a second wish in words', async () => {
    const { panel, click } = await begin();
    await click('Save MIDI');
    expect(panel.getByRole('status').textContent).toMatch(/^shuffle-g-104bpm\.wav is still being made\./);
    expect(panel.getByRole('progressbar')).toBeTruthy();
  });

  it('tells what went wrong and what to do', async () => {
    const { panel, click, takeAway } = await openPanel();
    takeAway.refuse = { kind: 'full' };
    await click('Save audio');
    expect((await panel.findByRole('alert')).textContent).toMatch(/no room left.*fewer choruses/);
  });
});
