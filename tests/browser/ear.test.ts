import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser, watchPage } from '../helpers/browser';
import { harpRecording } from '../helpers/harp-recording';
import { type ServedApp, serveApp } from '../helpers/serve';

/** 4 draw of a C harp, D5, then 4 draw bent, a semitone lower and 20 cents sharp of it. */
const recording = harpRecording(
  [
    { midi: 74, from: 0.5, to: 1.5 },
    { midi: 73, from: 1.7, to: 2.7, cents: 20 },
  ],
  3,
);

describe('the ear in a browser', () => {
  let browser: Browser;
  let app: ServedApp;
  beforeAll(async () => {
    app = await serveApp();
    browser = await launchBrowser({ microphone: recording.path });
  });
  afterAll(async () => {
    await browser?.close();
    await app?.dispose();
    recording.dispose();
  });

  it('listens where it is allowed, says how loud it is, and lets the microphone go', async () => {
    const context = await browser.newContext({ permissions: ['microphone'] });
    const page = await context.newPage();
    const { errors, failures, foreign } = watchPage(page);
    await page.goto(app.address, { waitUntil: 'networkidle' });
    const listen = page.getByRole('button', { name: 'Listen with the microphone' });
    await listen.click();
    const level = page.getByRole('meter', { name: 'Level of the microphone' });
    await expect.poll(() => level.getAttribute('aria-valuetext'), { timeout: 8000 }).toBe('good');
    expect(await listen.getAttribute('aria-pressed')).toBe('true');
    await listen.click();
    expect(await listen.getAttribute('aria-pressed')).toBe('false');
    expect([errors, failures, foreign(app.address)]).toEqual([[], [], []]);
    await context.close();
  });
});
