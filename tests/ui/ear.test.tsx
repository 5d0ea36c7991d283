import { act, cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
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
});
