import type { Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { watchPage } from '../helpers/browser';
import { spare } from '../helpers/built-page';
import { harpRecording } from '../helpers/harp-recording';
import { servedBrowser } from '../helpers/served-browser';

/**
 * What the fake microphone plays over and over, far enough apart for a turn each: G4, which two holes have; the bend of
 * 6 draw on a C harp (G♯5), the same 35 cents flat, and for a moment only; G4 again; then longer silence than a turn.
 */
const recording = harpRecording(
  [
    { midi: 67, from: 1.5, to: 3 },
    { midi: 80, from: 5.5, to: 6.5 },
    { midi: 80, from: 10, to: 11, cents: -35 },
    { midi: 80, from: 14.5, to: 14.75 },
    { midi: 67, from: 18.2, to: 19.2 },
  ],
  28.5,
);

/** What the verdict says of each of these, and of silence. */
const VERDICTS = [
  /^(Right on it|[1-5] cents (flat|sharp)), held (0\.[89]|1\.[01]) s\./,
  /^3[2-8] cents flat, held/,
  /^It was there for 0\.[123] s\./,
  /^That was (2 draw or 3 blow|3 blow or 2 draw)\./,
  /^No note was heard/,
];

/** What is ringed on the map, and what is ringed beside it as the same pitch. */
const ringed = (page: Page): Promise<string> =>
  page.evaluate(() =>
    ['.heard-ring', '.heard-other']
      .map((each) => {
        const mark = document.querySelector(each);
        if (!(mark instanceof HTMLElement) || mark.hidden) return '';
        const { left, top } = mark.getBoundingClientRect();
        const pill = [...document.querySelectorAll('.pill')].find((one) => {
          const box = one.getBoundingClientRect();
          return Math.abs(box.left - left) < 2 && Math.abs(box.top - top) < 2;
        });
        return pill?.getAttribute('data-sound') ?? '';
      })
      .join(' '),
  );

describe('bend practice in a browser', () => {
  const { browser, address } = servedBrowser({ microphone: recording.path });
  afterAll(() => recording.dispose());

  it('gives the verdict that each sound deserves, hands free, and takes 2 draw for meant on hole 2', async () => {
    const context = await browser().newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    await spare(context);
    const page = await context.newPage();
    const { errors, failures } = watchPage(page);
    await page.goto(address(), { waitUntil: 'networkidle' });
    await page.getByRole('button', { name: 'Practise', exact: true }).click();
    await page.getByRole('button', { name: 'Bends', exact: true }).click();
    await page.getByLabel('Before each try').selectOption('nothing');
    await page.getByLabel('Sound', { exact: true }).selectOption("2D''");
    await page.getByRole('button', { name: 'Start', exact: true }).click();
    await page.getByRole('button', { name: 'Listen to me' }).click();
    // Hole 2 is aimed at, so that its natural note is no open question.
    await expect.poll(() => ringed(page), { timeout: 40_000, interval: 100 }).toBe('2D ');
    // A new choice ends the run.
    await page.getByLabel('Sound', { exact: true }).selectOption("6D'");
    await page.getByRole('button', { name: 'Start', exact: true }).click();
    const said = new Set<string>();
    const words = page.locator('.bend-words');
    await expect
      .poll(
        async () => {
          said.add((await words.textContent()) ?? '');
          return VERDICTS.filter((each) => ![...said].some((text) => each.test(text))).map(String);
        },
        { timeout: 80_000, interval: 100 },
      )
      .toEqual([]);
    expect([errors, failures]).toEqual([[], []]);
    await context.close();
  }, 150_000);
});
