import { cleanup, screen } from '@testing-library/react';
import { afterEach, describe, expect, it } from 'vitest';
import { openPage } from '../helpers/open-page';

afterEach(cleanup);

const openLog = async () => {
  const page = openPage();
  await page.user.click(screen.getByRole('button', { name: 'Book' }));
  await page.user.click(screen.getByRole('button', { name: 'Log' }));
  return page;
};

const playFor = async ({ session, band, log }: Awaited<ReturnType<typeof openLog>>, bars: number) => {
  await session.commands.play();
  for (let bar = 0; bar < bars; bar += 1) {
    band.hear(2, bar);
    log.wait(2);
  }
  session.commands.stop();
};

describe('the log', () => {
  it('says what it is for while there is nothing, then what was played, which can be deleted and brought back', async () => {
    const page = await openLog();
    expect(screen.getByText(/^Nothing yet\. Play a song/)).toBeTruthy();
    await playFor(page, 6);
    const entry = (await screen.findByText('Shuffle in G')).closest('li');
    expect(entry?.textContent).toMatch(/Shuffle in G, 12 s.*G, 2nd position \(cross\), C harp/);
    await page.user.click(screen.getByRole('button', { name: 'Delete Shuffle in G from the log' }));
    expect(screen.queryByText('Shuffle in G', { selector: '.log-entry strong' })).toBeNull();
    await page.user.click(screen.getByRole('button', { name: 'Bring back' }));
    expect(screen.getByText('Shuffle in G', { selector: '.log-entry strong' })).toBeTruthy();
  });

  it('is off in one switch', async () => {
    const page = await openLog();
    await page.user.click(screen.getByRole('checkbox', { name: 'Write down what I play' }));
    await playFor(page, 6);
    expect(screen.getByText(/^Nothing yet\. Play a song/)).toBeTruthy();
  });
});
