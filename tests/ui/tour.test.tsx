import { act, cleanup, fireEvent, screen, within } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { TOUR_STEPS } from '../../src/ui/page/tour-steps';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const press = (name: string) => fireEvent.click(screen.getByText(name, { selector: 'button' }));
const tour = () => screen.queryByRole('region', { name: /^Tour, step/ });

/** What is fetched apart is drawn in a turn of its own, which only an awaited act waits for. */
const openHelp = () => act(async () => void fireEvent.keyDown(document.body, { key: '?' }));

const start = async () => {
  const opened = openPage();
  await openHelp();
  fireEvent.click(await screen.findByText('Take the tour'));
  await screen.findByRole('region', { name: /^Tour, step/ });
  return opened;
};

describe('the tour', () => {
  it('goes through every step, each about something the page has, and tells screen readers', async () => {
    await start();
    expect(document.activeElement).toBe(tour());
    for (const [i, { title, text, at }] of TOUR_STEPS.entries()) {
      expect(tour()?.textContent).toContain(`Tour, step ${i + 1} of ${TOUR_STEPS.length}`);
      expect(screen.getByText(title, { selector: 'h2' }).closest('[aria-live]')?.textContent).toBe(
        title + text,
      );
      expect(at.filter((selector) => document.querySelector(selector) !== null)).not.toEqual([]);
      press(i === TOUR_STEPS.length - 1 ? 'Done' : 'Next');
    }
    expect(tour()).toBeNull();
  });

  it('goes back, blocks nothing, ends with Escape, and begins again from Help', async () => {
    const { band } = await start();
    press('Next');
    press('Back');
    expect(tour()?.textContent).toContain('step 1 of');
    fireEvent.keyDown(tour() as HTMLElement, { key: ' ' });
    expect(band.asked).toContain('play from 0');
    fireEvent.keyDown(document.body, { key: 'Escape' });
    expect(tour()).toBeNull();
    await openHelp();
    fireEvent.click(await screen.findByText('Take the tour'));
    expect(within(await screen.findByRole('region', { name: /^Tour/ })).getByText('Next')).toBeTruthy();
  });
});
