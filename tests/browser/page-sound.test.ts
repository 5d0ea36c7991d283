import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { builtPage, currentBar, planned } from '../helpers/built-page';
import { attacksOf, peakBetween, takeRecording } from '../helpers/listen-in';

const { open } = builtPage();

describe('what leaves the loudspeaker', () => {
  it('is in time with the score, and the page with it', async () => {
    const settings = planned({ countInBars: 0, sounding: 'click' });
    const { context, page } = await open({ settings, tapped: true });
    await page.evaluate(() => {
      const seen: [string, number][] = [];
      Object.assign(window, { seen });
      new MutationObserver(() => {
        const label = document.querySelector('[aria-current="true"]')?.getAttribute('aria-label') ?? '';
        if (seen.at(-1)?.[0] !== label) seen.push([label, performance.now()]);
      }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ['aria-current'] });
    });
    await page.getByRole('button', { name: 'Play' }).click();
    await expect
      .poll(() => currentBar(page).getAttribute('aria-label'), { timeout: 20_000 })
      .toBe('Bar 4, G7');
    const offset = await page.evaluate(() => {
      const { tappedContext } = window as unknown as { tappedContext: AudioContext };
      const { contextTime, performanceTime } = tappedContext.getOutputTimestamp();
      return (performanceTime ?? 0) / 1000 - (contextTime ?? 0);
    });
    const seen = await page.evaluate(() => (window as unknown as { seen: [string, number][] }).seen);
    const heard = await takeRecording(page);
    await page.getByRole('button', { name: 'Stop' }).click();
    const attacks = attacksOf(heard);
    const beat = 60 / DEFAULT_SETTINGS.tempo;
    const first = attacks[0] ?? 0;
    const errors = attacks.map(
      (at) => Math.abs((at - first) / beat - Math.round((at - first) / beat)) * beat * 1000,
    );
    expect(attacks.length).toBeGreaterThan(10);
    expect(Math.max(...errors)).toBeLessThan(3);
    const barTwo = seen.find(([label]) => label.startsWith('Bar 2'))?.[1] ?? 0;
    const heardBarTwo = first + 4 * beat + heard.from / heard.sampleRate + offset;
    expect(Math.abs(barTwo / 1000 - heardBarTwo)).toBeLessThan(0.12);
    await context.close();
  });

  it('goes on without a gap while the page is blocked for a second and while the key changes, and ends at Stop', async () => {
    const { context, page } = await open({ settings: planned({ countInBars: 0 }), tapped: true });
    await page.getByRole('button', { name: 'Play' }).click();
    await expect
      .poll(() => currentBar(page).getAttribute('aria-label'), { timeout: 20_000 })
      .toBe('Bar 2, C7');
    await page.evaluate(() => {
      const until = performance.now() + 1000;
      while (performance.now() < until);
    });
    await page.getByLabel('Song key').selectOption({ label: 'E♭' });
    await page.waitForTimeout(2500);
    await page.getByRole('button', { name: 'Stop' }).click();
    await page.waitForTimeout(900);
    const heard = await takeRecording(page);
    const end = heard.samples.length / heard.sampleRate;
    const start = attacksOf(heard)[0] ?? 0;
    const beat = 60 / DEFAULT_SETTINGS.tempo;
    for (let at = start; at < end - 1.4 - beat; at += beat) {
      expect(peakBetween(heard, at, at + beat), `beat at ${at.toFixed(2)} s`).toBeGreaterThan(0.01);
    }
    expect(peakBetween(heard, end - 0.2, end)).toBeLessThan(0.003);
    await context.close();
  });
});
