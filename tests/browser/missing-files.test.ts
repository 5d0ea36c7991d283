import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { watchPage } from '../helpers/browser';
import { spare } from '../helpers/built-page';
import { listenIn, peakBetween, takeRecording } from '../helpers/listen-in';
import { servedBrowser } from '../helpers/served-browser';
import { soakIt } from '../helpers/soak';

/** The page with some of its files out of reach, as when the program that serves it has ended or a blocker steps in. */
describe('the built page without one of its files', () => {
  const { browser, address } = servedBrowser();

  const open = async (missing: readonly string[], before: () => void = () => {}) => {
    const context = await browser().newContext({ bypassCSP: true, serviceWorkers: 'block' });
    context.setDefaultTimeout(60_000);
    await spare(context);
    const page = await context.newPage();
    const { errors } = watchPage(page);
    const asked: string[] = [];
    for (const name of missing) {
      await context.route(new RegExp(`/assets/${name}-[\\w-]+\\.js`), (route) => {
        asked.push(name);
        return route.abort();
      });
    }
    await page.addInitScript(before);
    await listenIn(page);
    await page.goto(address());
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    return { context, page, errors, asked };
  };
  const stopButton = (page: Page) => page.getByRole('button', { name: 'Stop', exact: true });
  const peakOf = async (page: Page) => {
    const heard = await takeRecording(page);
    return peakBetween(heard, 0, heard.samples.length / heard.sampleRate);
  };
  /** Waits until something is heard later than so many seconds after the recording's first sample. */
  const heardAfter = async (page: Page, seconds: number) => {
    const loudness = async () => {
      const heard = await takeRecording(page);
      return peakBetween(heard, seconds, heard.samples.length / heard.sampleRate);
    };
    await expect.poll(loudness, { timeout: 60_000, interval: 250 }).toBeGreaterThan(0.01);
  };
  const exceptions = (errors: readonly string[]) =>
    errors.filter((text) => !/net::ERR_FAILED|Failed to load/.test(text));

  it('plays without the worker that computes sounds, and says that the page computes them', async () => {
    const { context, page, errors, asked } = await open(['bank-worker']);
    await stopButton(page).waitFor();
    await page.getByText(/the page computes them itself/).waitFor();
    await expect.poll(() => peakOf(page), { timeout: 60_000 }).toBeGreaterThan(0.03);
    expect(asked).toContain('bank-worker');
    expect(exceptions(errors)).toEqual([]);
    await context.close();
  });

  soakIt('plays without the limiter’s worklet, through the other limiter', async () => {
    const { context, page, errors } = await open([], () => {
      const { addModule } = AudioWorklet.prototype;
      AudioWorklet.prototype.addModule = function (url, ...rest) {
        if (!String(url).includes('master-worklet')) return addModule.call(this, url, ...rest);
        Object.assign(window, { refused: true });
        return Promise.reject(new DOMException('Unable to load a worklet’s module', 'AbortError'));
      };
    });
    await stopButton(page).waitFor();
    await expect.poll(() => peakOf(page), { timeout: 60_000 }).toBeGreaterThan(0.03);
    // The ceiling of the limiter that needs no worklet.
    expect(await peakOf(page)).toBeLessThanOrEqual(0.8);
    expect(await page.evaluate(() => 'refused' in window)).toBe(true);
    expect(await page.locator('.notice').count()).toBe(0);
    expect(errors).toEqual([]);
    await context.close();
  });

  soakIt('plays on when the limiter breaks down', async () => {
    const { context, page, errors } = await open([], () => {
      const { connect } = AudioNode.prototype;
      AudioNode.prototype.connect = function (this: AudioNode, ...args: Parameters<typeof connect>) {
        if (this instanceof AudioWorkletNode) Object.assign(window, { limiter: this });
        return connect.apply(this, args);
      } as typeof connect;
    });
    await stopButton(page).waitFor();
    await expect.poll(() => peakOf(page), { timeout: 60_000 }).toBeGreaterThan(0.03);
    await page.evaluate(() => {
      const { limiter } = window as unknown as { limiter: AudioWorkletNode };
      // What breaks down gives no sound any more.
      limiter.disconnect();
      limiter.dispatchEvent(new ErrorEvent('processorerror'));
    });
    const { samples, sampleRate } = await takeRecording(page);
    // What was on its way to the loudspeaker is over by then.
    await heardAfter(page, samples.length / sampleRate + 1);
    expect(errors).toEqual([]);
    await context.close();
  });

  soakIt('plays without the worker that beats', async () => {
    const { context, page } = await open(['pulse-worker']);
    await stopButton(page).waitFor();
    // Longer than the window of music that is handed over at the start.
    await heardAfter(page, 4);
    await context.close();
  });

  it('stops in words when no sound can be computed at all, and plays when asked again later', async () => {
    const { context, page, errors } = await open(['bank-worker', 'answer-request']);
    await page.getByText(/could not be loaded.*Press Play to try again/).waitFor();
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    expect(exceptions(errors)).toEqual([]);
    await context.unrouteAll();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    await stopButton(page).waitFor();
    await expect.poll(() => page.locator('.notice').count()).toBe(0);
    await context.close();
  });
});
