import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const chosen = (label: string): string => (screen.getByLabelText(label) as HTMLInputElement).value;
const choose = (label: string, value: string) =>
  fireEvent.change(screen.getByLabelText(label), { target: { value } });
const press = (name: string) => fireEvent.click(screen.getByText(name, { selector: 'button' }));
const undoKey = (target: Element, shiftKey = false) =>
  fireEvent.keyDown(target, { key: shiftKey ? 'Z' : 'z', ctrlKey: true, shiftKey });
const undone = (): string | null => screen.getByLabelText('Undo').textContent;
const songLine = () => screen.getByText(/Song in/).closest('p')?.textContent;

describe('undoing on the page', () => {
  it('works by keys from wherever nothing is typed, and says what was undone', () => {
    openPage();
    choose('Feel', 'rock');
    expect(undoKey(screen.getByLabelText('Tempo'))).toBe(true);
    expect(chosen('Feel')).toBe('rock');
    expect(undoKey(screen.getByLabelText('Feel'))).toBe(false);
    expect([chosen('Feel'), undone()]).toEqual(['shuffle', 'Undone: feel']);
    undoKey(document.body, true);
    expect([chosen('Feel'), undone()]).toEqual(['rock', 'Made again: feel']);
  });

  it('is offered at the foot of the panels where choices are made, with their names, once there are any', () => {
    openPage();
    press('Song');
    expect(screen.queryByLabelText('Choices made')).toBeNull();
    press('Close');
    choose('Feel', 'rock');
    for (const entry of ['Song', 'Band', 'Practise', 'Harp']) {
      press(entry);
      const row = screen.getByLabelText('Choices made');
      expect([entry, row.parentElement?.lastElementChild === row]).toEqual([entry, true]);
    }
    screen.getByText('Undo feel').focus();
    press('Undo feel');
    expect([chosen('Feel'), document.activeElement?.textContent]).toEqual(['shuffle', 'Redo feel']);
    press('Redo feel');
    expect([chosen('Feel'), document.activeElement?.textContent]).toEqual(['rock', 'Undo feel']);
  });
});

describe('changes at the next chorus', () => {
  it('are chosen and said at once, come with the chorus, sooner when asked, or not at all', async () => {
    const { band, session } = openPage();
    press('Song');
    fireEvent.click(screen.getByLabelText('Change at the next chorus'));
    press('Close');
    await act(() => session.commands.play());
    act(() => band.hear(1, 4));
    choose('Song key', '9');
    fireEvent.click(screen.getByLabelText('Faster'));
    expect(screen.getByText('From the next chorus: A on a D harp, tempo 106.')).toBeTruthy();
    expect([chosen('Song key'), chosen('Tempo'), songLine()]).toEqual([
      '9',
      '106',
      'Song in G, C harp, 2nd position (cross)',
    ]);
    press('Take it back');
    expect([chosen('Song key'), chosen('Tempo'), band.programs.at(-1)?.later]).toEqual([
      '7',
      '104',
      undefined,
    ]);
    choose('Song key', '9');
    act(() => band.hear(2, 0));
    expect(songLine()).toBe('Song in A, D harp, 2nd position (cross)');
    expect(screen.queryByText(/From the next chorus/)).toBeNull();
    choose('Song key', '0');
    press('Change now');
    expect([band.programs.at(-1)?.chart.key, screen.queryByText(/From the next chorus/)]).toEqual([0, null]);
  });
});

describe('a loudspeaker that lags', () => {
  it('is waited for as long as the mixer says', () => {
    const { band } = openPage();
    press('Band');
    press('Mixer');
    fireEvent.change(screen.getByLabelText(/^Loudspeaker late by/), { target: { value: '180' } });
    expect(band.sounds.at(-1)?.lag).toBe(0.18);
  });
});
