import { cleanup, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openHarp = async (stored?: unknown) => {
  const opened = openPage(stored);
  await opened.user.click(screen.getByRole('button', { name: 'Harp' }));
  const panel = within(screen.getByRole('region', { name: 'Harp' }));
  const unfold = (title: string) => opened.user.click(panel.getByText(title));
  return { ...opened, panel, unfold, state: opened.session.store.getState };
};

describe('the harp panel', () => {
  it('leaves a single bend out of everything when it is switched off', async () => {
    const { panel, user } = await openHarp();
    const seventh = () =>
      within(screen.getByRole('article', { name: 'Now' })).getByRole('row', { name: /^♭7/ }).textContent;
    expect(seventh()).toContain('2↓//');
    await user.click(panel.getByRole('button', { name: 'draw 2, bent two semitones' }));
    expect(seventh()).not.toContain('2↓//');
  });

  it('puts harps into the case and takes them out again', async () => {
    const { panel, unfold, user, state, storage } = await openHarp();
    await unfold('Your case');
    await user.click(panel.getByRole('button', { name: /Put the harp in hand/ }));
    expect(state().harpCase).toHaveLength(1);
    await user.click(panel.getByRole('button', { name: /Put the harp in hand/ }));
    expect(state().harpCase).toHaveLength(1);
    expect(panel.getByText('This harp is in your case already: C harp.')).toBeTruthy();
    expect(storage.items.get('combshed.harps')).toContain('"key":0');
    await user.selectOptions(screen.getByLabelText('Harp key'), 'A');
    await user.click(panel.getByRole('button', { name: 'Take the C harp' }));
    expect(state().tune.harp.key).toBe(0);
    const [kept] = state().harpCase;
    await user.click(panel.getByRole('button', { name: 'Delete the C harp' }));
    expect(state().harpCase).toEqual([]);
    await user.click(panel.getByRole('button', { name: 'Bring it back' }));
    expect(state().harpCase).toEqual([kept]);
    expect(panel.queryByRole('button', { name: 'Bring it back' })).toBeNull();
  });

  it('advises in words, and taking a harp keeps the song where it is', async () => {
    const { panel, unfold, user, state } = await openHarp();
    await unfold('Which harp for this song');
    const song = state().tune.chart.key;
    const [first] = panel.getAllByRole('button', { name: 'Take this harp' });
    expect(panel.getAllByText(/chord tone/).length).toBeGreaterThan(2);
    if (first) await user.click(first);
    expect(state().tune.chart.key).toBe(song);
  });

  it('follows every change of a reed with the bends it gives', async () => {
    const { panel, unfold, user } = await openHarp();
    await unfold('Reeds');
    await user.click(panel.getByRole('button', { name: 'draw 5 a semitone higher' }));
    const map = within(screen.getByRole('region', { name: 'Harp map' }));
    expect(map.getByRole('button', { name: /^draw 5, bent one semitone: F/ })).toBeTruthy();
  });

  it('allows nonsense but marks it', async () => {
    const { panel, unfold, user } = await openHarp();
    await unfold('Reeds');
    await user.click(panel.getByRole('button', { name: 'draw 5 a semitone lower' }));
    expect(panel.getByText(/Hole 5 has the same note on blow and draw/)).toBeTruthy();
  });

  it('saves a tuning by name and offers it beside the others', async () => {
    const { panel, unfold, user } = await openHarp();
    await unfold('Reeds');
    await user.click(panel.getByRole('button', { name: 'draw 5 a semitone higher' }));
    await user.type(panel.getByLabelText('Name of this tuning'), 'Hall tuning');
    await user.click(panel.getByRole('button', { name: 'Save tuning' }));
    const options = within(screen.getByLabelText('Tuning')).getAllByRole('option');
    expect(options.map(({ textContent }) => textContent)).toContain('Hall tuning');
  });

  it('takes cents below zero, keeps them when the tuning is saved, and stays in the field', async () => {
    const { panel, unfold, user, state } = await openHarp();
    await unfold('Reeds');
    const cents = () => panel.getByLabelText<HTMLInputElement>('Cents of draw 3');
    await user.clear(cents());
    await user.type(cents(), '-9{Enter}');
    expect(cents().value).toBe('−9');
    await user.click(panel.getByRole('button', { name: 'draw 5 a semitone higher' }));
    await user.click(panel.getByRole('button', { name: 'Valve on hole 7' }));
    await user.type(panel.getByLabelText('Name of this tuning'), 'Hall tuning');
    await user.click(panel.getByRole('button', { name: 'Save tuning' }));
    expect(document.activeElement).toBe(panel.getByLabelText('Name of this tuning'));
    expect(state().settings.tuning.name).toBe('Hall tuning');
    expect(state().settings.valved).toEqual([7]);
    expect(cents().value).toBe('−9');
    await user.selectOptions(screen.getByLabelText('Tuning'), 'Natural minor');
    expect(state().settings.intonation).toBe('equal');
  });

  it('says what the cover of a minor harp usually names', async () => {
    const { panel, user } = await openHarp();
    await user.selectOptions(screen.getByLabelText('Tuning'), 'Natural minor');
    expect(panel.getByText(/Its cover usually says Gm; it has the range of a C harp/)).toBeTruthy();
  });

  it('says why cents cannot be read, and keeps what was typed until it is mended', async () => {
    const { panel, unfold, user, state } = await openHarp();
    await unfold('Reeds');
    const cents = panel.getByLabelText<HTMLInputElement>('Cents of draw 3');
    await user.clear(cents);
    await user.type(cents, 'flat{Enter}');
    expect(panel.getByRole('alert').textContent).toBe('“flat” is not a number. Type cents from −100 to 100.');
    expect([cents.value, cents.getAttribute('aria-invalid')]).toEqual(['flat', 'true']);
    await user.clear(cents);
    await user.type(cents, '-9,5{Enter}');
    expect(panel.queryByRole('alert')).toBeNull();
    expect(cents.value).toBe('−9.5');
    const { intonation } = state().settings;
    expect(typeof intonation === 'string' ? intonation : intonation.cents.draw[2]).toBe(-9.5);
  });

  it('shows the expected cents of a just harp on the map', async () => {
    const { panel, user } = await openHarp();
    await user.selectOptions(panel.getByLabelText('Intonation'), 'just-second');
    await user.click(panel.getByLabelText('Show expected cents on the map'));
    const map = within(screen.getByRole('region', { name: 'Harp map' }));
    expect(map.getByRole('button', { name: /^draw 5: F/ }).textContent).toContain('−29');
  });

  it('lists what the harp plays without a bend', async () => {
    const { panel, unfold } = await openHarp();
    await unfold('What this harp plays without bends');
    expect(panel.getByText(/G, 2nd position/).parentElement?.textContent).toContain('mixolydian');
  });
});

describe('the map', () => {
  it('shows every way to get the pitch that was picked', async () => {
    const { user } = openPage();
    const map = within(screen.getByRole('region', { name: 'Harp map' }));
    await user.click(map.getByRole('button', { name: /^draw 2: G/ }));
    expect(map.getByText(/G4, 392\.0 Hz/).parentElement?.textContent).toMatch(/draw 2.*blow 3/);
  });

  it('lets a bend glide from its natural note', async () => {
    const { band, user } = openPage();
    await user.click(
      within(screen.getByRole('region', { name: 'Harp map' })).getByRole('button', {
        name: /^draw 3, bent two/,
      }),
    );
    expect(band.asked.at(-1)).toBe('audition lead 69 from 2 above');
  });

  it('is played from the computer keyboard: a digit for the hole, twice for draw', async () => {
    const { band, user } = openPage();
    const map = within(screen.getByRole('region', { name: 'Harp map' }));
    map.getByRole('button', { name: /^blow 1: C/ }).focus();
    await user.keyboard('44');
    expect(band.asked.filter((each) => each.startsWith('audition'))).toEqual([
      'audition lead 72',
      'audition lead 74',
    ]);
  });

  it('hears any key of the piano, and says when the harp does not have it', async () => {
    const { band, user } = openPage({ version: 1, drawing: 'keys' });
    await user.click(screen.getByRole('button', { name: 'Piano key E♭4' }));
    expect(band.asked.at(-1)).toBe('audition lead 63');
    expect(screen.getByText('out of reach:').parentElement?.textContent).toContain('1↑○');
  });
});
