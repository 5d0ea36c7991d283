import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, describe, expect, it } from 'vitest';
import { watchPage } from '../helpers/browser';
import { harpRecording } from '../helpers/harp-recording';
import { servedBrowser } from '../helpers/served-browser';

/**
 * What the fake microphone plays over and over: 4 draw of a C harp (D5), its bend 20 cents sharp (C♯5), G4, which two
 * holes have, and C5, E5 and G5 together, which are 4, 5 and 6 blow.
 */
const recording = harpRecording(
  [
    { midi: 74, from: 0.2, to: 1.1 },
    { midi: 73, from: 1.3, to: 2.3, cents: 20 },
    { midi: 67, from: 2.5, to: 3.4 },
    ...[72, 76, 79].map((midi) => ({ midi, from: 3.6, to: 4.5, amplitude: 0.5 })),
  ],
  4.7,
);

/** What is ringed on the map, with its cents, and what is ringed dashed beside it. */
const lit = (page: Page): Promise<string | null> =>
  page.evaluate(() => {
    const boxOf = (mark: Element): DOMRect => mark.getBoundingClientRect();
    const under = (mark: Element | null): string | null => {
      if (!(mark instanceof HTMLElement) || mark.hidden) return null;
      const { left, top } = boxOf(mark);
      const pill = [...document.querySelectorAll('.pill')].find(
        (each) => Math.abs(boxOf(each).left - left) < 2 && Math.abs(boxOf(each).top - top) < 2,
      );
      return pill?.getAttribute('data-sound') ?? null;
    };
    const [sound, ...together] = [...document.querySelectorAll('.heard-ring')].flatMap(
      (ring) => under(ring) ?? [],
    );
    if (sound === undefined) return null;
    if (together.length > 0) return [sound, ...together].join(' with ');
    const other = under(document.querySelector('.heard-other'));
    const cents = document.querySelector('.heard-ring span')?.textContent;
    return `${sound} ${cents}${other ? ` or ${other}` : ''}`;
  });

/**
 * Share of one core that the page's own thread takes in the next two seconds, while the way through the piano is drawn.
 * By the thread's own clock, which stands while the machine is busy with something else.
 */
const loadOf = async (page: Page): Promise<number> => {
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable', { timeDomain: 'threadTicks' });
  const spent = async () => {
    const { metrics } = await session.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN;
  };
  const before = await spent();
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 2000)));
  return ((await spent()) - before) / 2;
};

/** Takes the leave to use the microphone away, as the browser's own settings do. */
const forbid = async (page: Page, address: string): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  const { browserContextId } = (await session.send('Target.getTargetInfo')).targetInfo;
  const browser = await page.context().browser()?.newBrowserCDPSession();
  await browser?.send('Browser.setPermission', {
    permission: { name: 'microphone' },
    setting: 'denied',
    origin: new URL(address).origin,
    ...(browserContextId !== undefined && { browserContextId }),
  });
};

describe('the ear in a browser', () => {
  const { browser, address } = servedBrowser({ microphone: recording.path });
  afterAll(() => recording.dispose());

  const visit = async (context: BrowserContext) => {
    context.setDefaultTimeout(60_000);
    const page = await context.newPage();
    const watch = watchPage(page);
    await page.goto(address());
    return { page, watch, listen: page.getByRole('button', { name: 'Listen with the microphone' }) };
  };

  it('lights the reed that sounds with its cents and every hole of a grip, says how loud it is, keeps the page free, and lets the microphone go', async () => {
    const context = await browser().newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    const { page, watch, listen } = await visit(context);
    await listen.click();
    const level = page.getByRole('meter', { name: 'Level of the microphone' });
    await expect.poll(() => level.getAttribute('aria-valuetext'), { timeout: 60_000 }).toBe('good');
    const seen = new Set<string>();
    const wanted = [/^4D (0|[+−]5)$/, /^4D' \+(15|20|25)$/, /^2D (0|[+−]5) or 3B$/, /^4B with 5B with 6B$/];
    await expect
      .poll(
        async () => {
          seen.add((await lit(page)) ?? 'nothing');
          return wanted.filter((each) => [...seen].some((text) => each.test(text))).length;
        },
        { timeout: 60_000, interval: 40 },
      )
      .toBe(wanted.length);
    await page.getByRole('button', { name: 'Keys', exact: true }).click();
    await page.locator('.keys').waitFor();
    expect(await loadOf(page)).toBeLessThan(0.5);
    expect(await listen.getAttribute('aria-pressed')).toBe('true');
    await listen.click();
    await expect.poll(() => listen.getAttribute('aria-pressed')).toBe('false');
    await page.locator('.heard').waitFor({ state: 'detached' });
    const { errors, failures, foreign } = watch;
    expect([errors, failures, foreign(address())]).toEqual([[], [], []]);
    await context.close();
  });

  it('says that there is none, or that it is not allowed, and listens once it is', async () => {
    const context = await browser().newContext({ serviceWorkers: 'block' });
    await context.addInitScript(() => {
      // The fake prompt of the test browser always says yes: the player's no is put in its place, as the standard has it.
      const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
      const refusals = ['NotFoundError', 'NotAllowedError'];
      navigator.mediaDevices.getUserMedia = (wishes) => {
        const name = refusals.shift();
        return name === undefined ? ask(wishes) : Promise.reject(new DOMException('', name));
      };
    });
    const { page, listen } = await visit(context);
    await listen.click();
    await page.getByText('No microphone was found').waitFor();
    await expect.poll(() => listen.getAttribute('aria-pressed')).toBe('false');
    await listen.click();
    await page.getByText('The microphone is not allowed for this page').waitFor();
    expect(await page.getByText('No microphone was found').count()).toBe(0);
    await expect.poll(() => listen.getAttribute('aria-pressed')).toBe('false');
    await context.grantPermissions(['microphone']);
    await listen.click();
    await expect.poll(() => lit(page), { timeout: 60_000 }).not.toBeNull();
    await expect.poll(() => page.getByText('The microphone is not allowed').count()).toBe(0);
    await context.close();
  });

  it('says that the microphone is gone, or forbidden by now, while the band plays on, and goes on when it is back', async () => {
    const context = await browser().newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    await context.addInitScript(() => {
      // Nobody can pull a plug here: the track ends and the list of devices changes, as the standard has it.
      const { mediaDevices } = navigator;
      const ask = mediaDevices.getUserMedia.bind(mediaDevices);
      const list = mediaDevices.enumerateDevices.bind(mediaDevices);
      let gone = false;
      mediaDevices.enumerateDevices = async () => (gone ? [] : list());
      mediaDevices.getUserMedia = async (wishes) => {
        const stream = await ask(wishes);
        window.addEventListener('pull', () => {
          gone = true;
          for (const track of stream.getTracks()) track.dispatchEvent(new Event('ended'));
          mediaDevices.dispatchEvent(new Event('devicechange'));
        });
        window.addEventListener('plug', () => {
          gone = false;
          mediaDevices.dispatchEvent(new Event('devicechange'));
        });
        return stream;
      };
    });
    const { page, listen } = await visit(context);
    await listen.click();
    await expect.poll(() => lit(page), { timeout: 60_000 }).not.toBeNull();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const stop = page.getByRole('button', { name: 'Stop', exact: true });
    await stop.waitFor();
    await page.evaluate(() => window.dispatchEvent(new Event('pull')));
    await page.getByText('The microphone is gone').waitFor();
    expect(await stop.isVisible()).toBe(true);
    await page.evaluate(() => window.dispatchEvent(new Event('plug')));
    await expect.poll(() => lit(page), { timeout: 60_000 }).not.toBeNull();
    await expect.poll(() => page.getByText('The microphone is gone').count()).toBe(0);
    // Taken away in the browser's own settings, which ends the track.
    await forbid(page, address());
    await page.getByText('The microphone is not allowed for this page').waitFor();
    await expect.poll(() => listen.getAttribute('aria-pressed')).toBe('false');
    expect(await stop.isVisible()).toBe(true);
    await context.close();
  });
});
