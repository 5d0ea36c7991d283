import { act, cleanup, fireEvent, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const entry = () => screen.getByText('Band', { selector: '.masthead button' });

describe('closing a panel', () => {
  it.each([
    ['Escape', () => fireEvent.keyDown(document.activeElement ?? document.body, { key: 'Escape' })],
    ['its button', () => fireEvent.click(screen.getByText('Close'))],
  ])('by %s gives the focus back to what opened it, where Space still plays', async (_, close) => {
    const { band } = openPage();
    entry().focus();
    fireEvent.click(entry());
    expect(document.activeElement?.tagName).toBe('H2');
    fireEvent.click(screen.getByText('Mixer', { selector: 'button' }));
    expect([document.activeElement?.tagName, document.activeElement?.textContent]).toEqual(['H2', 'Mixer']);
    close();
    expect(document.activeElement).toBe(entry());
    await act(async () => void fireEvent.keyDown(entry(), { key: ' ' }));
    expect(band.asked).toEqual(expect.arrayContaining(['play from 0']));
  });
});
