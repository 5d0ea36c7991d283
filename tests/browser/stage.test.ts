import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import type { Settings } from '../../src/core/settings/settings';
import { launchBrowser } from '../helpers/browser';
import { type ServedApp, serveApp } from '../helpers/serve';

/** Sizes of music stands, projectors and phones; the last is 1440×900 at 200 % zoom. */
const SIZES = [
  { width: 1440, height: 900, cap: 44 },
  { width: 1366, height: 768, cap: 40 },
  { width: 1180, height: 820, cap: 44 },
  { width: 1024, height: 768, cap: 40 },
  { width: 820, height: 1180, cap: 44 },
  { width: 390, height: 844, cap: 30 },
  { width: 844, height: 390, cap: 30 },
  { width: 720, height: 450, cap: 30 },
] as const;

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  app = await serveApp();
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
  await app?.dispose();
});

const openStage = async (
  size: { readonly width: number; readonly height: number },
  settings: Partial<Settings>,
  look: 'light' | 'dark' = 'dark',
): Promise<Page> => {
  const page = await browser.newPage({
    viewport: { width: size.width, height: size.height },
    colorScheme: look,
  });
  await page.addInitScript(
    (stored) => {
      localStorage['combshed.settings'] ??= stored;
    },
    JSON.stringify(
      storableSettings({
        ...DEFAULT_SETTINGS,
        plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0 },
        ...settings,
      }),
    ),
  );
  await page.goto(app.address, { waitUntil: 'networkidle' });
  await page.keyboard.press('f');
  await page.getByRole('region', { name: 'Stage' }).waitFor();
  return page;
};

const play = async (page: Page): Promise<void> => {
  await page.keyboard.press(' ');
  await page.locator('.stage .stage-bar li[aria-current="true"]').waitFor();
  await page.locator('.stage-beats i[data-on="true"]').first().waitFor({ timeout: 20_000 });
};

/** Everything wrong with how a page is laid out, in words, and how tall its capitals are. */
const look = (page: Page) =>
  page.evaluate(async () => {
    await document.fonts.ready;
    const pen = document.createElement('canvas').getContext('2d');
    /** Height of a capital H in an element's own font, by the browser's text metrics (HTML standard, TextMetrics). */
    const capOf = (selector: string): number => {
      const element = document.querySelector(selector);
      if (element === null || pen === null) return 0;
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
      pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      return pen.measureText('H').actualBoundingBoxAscent;
    };
    const seen = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true }) &&
      !element.closest('.unseen') &&
      element.getClientRects().length > 0;
    const nameOf = (element: Element): string =>
      `${element.className || element.tagName} "${element.textContent?.slice(0, 24)}"`;
    const wrong: string[] = [];
    const { innerWidth, innerHeight } = window;
    const boxes = [
      ...document.querySelectorAll(
        '.stage .play, .stage-where, .strip, .stage-leave, .stage-now, .stage-tones table, .stage-high, .stage-next, .stage-sign .turn, .stage-map .drawing',
      ),
    ].filter(seen);
    const read = [
      ...document.querySelectorAll(
        '.stage-tones .tap > [aria-hidden], .stage-tones .degree, .stage-note, .stage-chord .chord, .stage-next .tap > [aria-hidden], .stage-label, .stage-harp, .stage-sign strong, .call-bar, .ring, .stage-sign p, .stage-sign button, .comb .hole, .comb .pill, .count-number',
      ),
    ].filter(seen);
    for (const element of [...boxes, ...read]) {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      if (left < -1 || top < -1 || right > innerWidth + 1 || bottom > innerHeight + 1)
        wrong.push(`${nameOf(element)} leaves the window: ${[left, top, right, bottom].map(Math.round)}`);
    }
    // What is read lies inside the box of its part, so that boxes that do not overlap keep letters apart.
    for (const element of read) {
      const part = element.closest('.stage-now, .stage-tones, .stage-next, .turn, .drawing');
      if (part === null) continue;
      const inner = element.getBoundingClientRect();
      const outer = part.getBoundingClientRect();
      const out = Math.max(
        outer.left - inner.left,
        outer.top - inner.top,
        inner.right - outer.right,
        inner.bottom - outer.bottom,
      );
      if (out > 3) wrong.push(`${nameOf(element)} leaves ${part.className} by ${Math.round(out)}`);
    }
    for (const [i, a] of boxes.entries()) {
      for (const b of boxes.slice(i + 1)) {
        if (a.contains(b) || b.contains(a)) continue;
        const [p, q] = [a.getBoundingClientRect(), b.getBoundingClientRect()];
        const across = Math.min(p.right, q.right) - Math.max(p.left, q.left);
        const down = Math.min(p.bottom, q.bottom) - Math.max(p.top, q.top);
        if (across > 1 && down > 1)
          wrong.push(
            `${a.className} and ${b.className} overlap by ${Math.round(across)}×${Math.round(down)}`,
          );
      }
    }
    for (const cell of document.querySelectorAll('.strip-names, .stage-leave, .stage .play')) {
      if (
        seen(cell) &&
        (cell.scrollWidth > cell.clientWidth + 1 || cell.scrollHeight > cell.clientHeight + 1)
      )
        wrong.push(`${nameOf(cell)} is cut`);
    }
    return { wrong, holes: capOf('.stage-tones td .tap'), chord: capOf('.stage-now .chord') };
  });

const STATES: readonly { readonly name: string; readonly settings: Partial<Settings> }[] = [
  { name: 'playing', settings: {} },
  { name: 'trading', settings: { trade: { on: true, calls: '' } } },
  {
    name: 'trading a long call in letters, with another harp next',
    settings: {
      trade: { on: true, calls: "4B:e 4D:e 5B:e 5D:e 6B:q (4D 5D):q | 3D'':e 3D':e 2D:q 2D'':h" },
      tabStyle: 'letters',
      plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0, keys: { kind: 'fourths' } },
    },
  },
  { name: 'playing, with the Keys drawing', settings: { drawing: 'keys' } },
];

describe('Stage at every size', () => {
  it.each(STATES)(
    'cuts and covers nothing while $name, and is read from two metres',
    async ({ settings }) => {
      const page = await openStage(SIZES[0], settings);
      await play(page);
      const found: string[] = [];
      const figures: string[] = [];
      for (const { width, height, cap } of SIZES) {
        await page.setViewportSize({ width, height });
        // Letters follow the room they have a frame later.
        await page.evaluate(
          () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
        );
        const { wrong, holes, chord } = await look(page);
        figures.push(`${width}×${height}: holes ${holes.toFixed(1)}, chord ${chord.toFixed(1)}`);
        found.push(...wrong.map((each) => `${width}×${height}: ${each}`));
        if (Math.min(holes, chord) < cap)
          found.push(`${width}×${height}: capitals of ${holes} and ${chord} px`);
      }
      expect(found, figures.join('; ')).toEqual([]);
      await page.close();
    },
  );
});

describe('Stage', () => {
  it.each(['light', 'dark'] as const)(
    'has nothing that axe finds, in the %s look, while trading',
    async (scheme) => {
      const page = await openStage(SIZES[0], { trade: { on: true, calls: '' } }, scheme);
      await play(page);
      const { violations } = await new AxeBuilder({ page }).include('.stage').analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 90)).join(' ')}`),
      ).toEqual([]);
      await page.close();
    },
  );

  it('gives the focus back to what had it', async () => {
    const page = await openStage(SIZES[0], {});
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Stage' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Stage' }).waitFor();
    await page.keyboard.press('f');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Stage');
    await page.close();
  });
});
