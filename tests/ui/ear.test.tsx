import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { createSoundChooser } from '../../src/core/hearing/choose-sounds';
import { asCents, asHz, asSeconds } from '../../src/core/theory/units';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openEar = async () => {
  const opened = openPage();
  const { user } = opened;
  await user.click(screen.getByRole('button', { name: 'Practise' }));
  await user.click(await screen.findByRole('button', { name: 'Ear' }));
  const panel = await screen.findByRole('region', { name: 'Ear' });
  return { ...opened, panel: within(panel) };
};

describe('the page for the ear', () => {
  it('says that nothing is sent, listens, and names the microphones', async () => {
    const { panel, user, microphone } = await openEar();
    panel.getByText(/never sent anywhere/);
    act(() => microphone.plug([{ id: 'lapel', name: 'Lapel' }]));
    await user.click(panel.getByRole('button', { name: 'Listen' }));
    await panel.findByRole('button', { name: 'Stop listening' });
    await user.selectOptions(panel.getByLabelText('Microphone'), 'Lapel');
    expect(microphone.asked.at(-1)).toBe('open lapel');
  });

  it('shows the level in words', async () => {
    const { user, microphone } = await openEar();
    await user.click(screen.getByRole('button', { name: 'Listen with the microphone' }));
    act(() => void microphone.hear({ level: { peak: -40, mean: -50, sent: -120 } }));
    const [meter] = screen.getAllByRole('meter', { name: 'Level of the microphone' });
    expect(meter?.getAttribute('aria-valuetext')).toBe('too quiet');
  });

  it('calibrates only while it listens, and says what to do', async () => {
    const { panel, user } = await openEar();
    expect(panel.getByRole<HTMLButtonElement>('button', { name: 'Calibrate' }).disabled).toBe(true);
    await user.click(panel.getByRole('button', { name: 'Listen' }));
    await user.click(panel.getByRole('button', { name: 'Calibrate' }));
    panel.getByText(/Two seconds of quiet/);
    await user.click(panel.getByRole('button', { name: 'Break off' }));
    expect(panel.queryByText(/Two seconds of quiet/)).toBeNull();
  });

  it('says of a calibration whether notes are heard before or after a click', async () => {
    const { panel, user, storage } = await openEar();
    await user.click(panel.getByRole('button', { name: 'Listen' }));
    /** As another tab has calibrated. */
    const heard = (lag: number): void => {
      const key = 'combshed.ears';
      const newValue = JSON.stringify([{ id: 'built-in', name: '', noise: -60, lag }]);
      storage.items.set(key, newValue);
      act(() => void window.dispatchEvent(new StorageEvent('storage', { key, newValue })));
    };
    heard(0.113);
    panel.getByText('Your notes are heard 113 ms after a click, all ways together.');
    heard(-0.019);
    panel.getByText('Your notes are heard 19 ms before a click, all ways together.');
  });

  it('reads the harp’s own tuning from its notes, shows what is still to play, and takes it back', async () => {
    const { panel, user, microphone, session } = await openEar();
    const state = session.store.getState;
    await user.click(panel.getByRole('button', { name: 'Listen' }));
    await user.click(panel.getByText('The harp’s own tuning'));
    await user.click(panel.getByRole('button', { name: 'Measure this harp' }));
    expect(panel.getByRole('button', { name: '1 blow: still to play' }).getAttribute('aria-current')).toBe(
      'step',
    );
    const harp = state().tune.harp;
    const chooser = createSoundChooser({ harp });
    // C4 is nine semitones below A4; 1 blow of this harp lies 12 cents below it.
    const note = chooser.choose(
      {
        ...{ id: 1, from: asSeconds(0), to: asSeconds(1), frequency: asHz(440 * 2 ** (-9 / 12 - 12 / 1200)) },
        ...{ level: -20, steady: true, joined: 'attack', vibrato: null },
        movement: { start: asCents(0), settling: asSeconds(0), end: asCents(0) },
      },
      true,
    );
    act(() => void microphone.hear({ notes: [note] }));
    panel.getByRole('button', { name: '1 blow: −12 cents' });
    expect(microphone.asked.at(-1)).toBe('teach 1B 0 1');
    expect(panel.getByText(/Next: 1 draw. 1 of 20 reeds/)).toBeTruthy();
    await user.click(panel.getByRole('button', { name: 'Use these cents for this harp' }));
    expect(state().settings.intonation).toMatchObject({ cents: { blow: [-12, 0, 0, 0, 0, 0, 0, 0, 0, 0] } });
    expect(state().harpCase).toMatchObject([{ key: 0, intonation: state().settings.intonation }]);
    await user.click(panel.getByRole('button', { name: 'Take them back' }));
    expect([state().settings.intonation, state().harpCase]).toEqual(['equal', []]);
    // What the ear learnt meanwhile is said, and forgotten where that is asked for.
    const key = microphone.choices.at(-1)?.reeds?.key ?? '';
    const reeds = [{ id: '1B', levels: [0, -6], windows: [8, 8] }];
    act(() => microphone.learn({ key, known: { common: [], colour: [], reeds } }));
    panel.getByText(/knows how 1 of 20 reeds sound at this microphone/);
    await user.click(panel.getByRole('button', { name: 'Forget how harps sound here' }));
    expect(panel.queryByText(/reeds sound at this microphone/)).toBeNull();
  });
});
