import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import type { Settings } from '../../src/core/settings/settings';
import { asBpm, asPitchClass } from '../../src/core/theory/units';
import { axeFinds, turnTo } from '../helpers/axe';
import { builtPage } from '../helpers/built-page';
import { lasting, resize } from '../helpers/page-layout';
import { inSoak, inTurn } from '../helpers/soak';

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

const { open: openBuilt } = builtPage();

const openStage = async (
  size: { readonly width: number; readonly height: number },
  settings: Partial<Settings>,
): Promise<Page> => {
  const { page } = await openBuilt({
    size,
    look: 'dark',
    settings: {
      plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0, sounding: 'click' },
      // Straight harp and slow: the first bar holds C7 on a C harp, whose tones take the most room, all the while.
      position: 1,
      tempo: asBpm(40),
      ...settings,
    },
  });
  await page.getByRole('button', { name: 'Stage' }).click();
  await page.getByRole('region', { name: 'Stage' }).waitFor();
  return page;
};

const play = async (page: Page): Promise<void> => {
  await page.keyboard.press(' ');
  await page.locator('.stage .stage-bar li[aria-current="true"]').waitFor();
  await page.locator('.stage-beats i[data-on="true"]').first().waitFor({ timeout: 60_000 });
};

/** Everything wrong with how a page is laid out, in words, and how tall its capitals are. */
const look = (page: Page) =>
  page.evaluate(async () => {
    await document.fonts.ready;
    const pen = document.createElement('canvas').getContext('2d');
    if (pen === null) throw new Error('This browser measures no text');
    /** Text metrics in an element's own font (HTML standard, TextMetrics). */
    const measure = (element: Element, text: string): TextMetrics => {
      const { fontWeight, fontSize, fontFamily } = getComputedStyle(element);
      pen.font = `${fontWeight} ${fontSize} ${fontFamily}`;
      return pen.measureText(text);
    };
    /** Height of a capital H, in CSS pixels. */
    const capOf = (selector: string): number => {
      const element = document.querySelector(selector);
      return element === null ? 0 : measure(element, 'H').actualBoundingBoxAscent;
    };
    const seen = (element: Element): boolean =>
      element.checkVisibility({ visibilityProperty: true }) &&
      !element.closest('.unseen') &&
      element.getClientRects().length > 0;
    const nameOf = (element: Element): string =>
      `${element.getAttribute('class') ?? element.tagName} "${element.textContent?.slice(0, 24)}"`;
    /** Where an element's letters are, not the lines they stand in: a drawing is as large as its box. */
    const inkOf = (element: Element): DOMRect => {
      if (element instanceof SVGElement) return element.getBoundingClientRect();
      const edges = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
      const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
      for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
        const parent = node.parentElement;
        const text = node.textContent ?? '';
        if (parent === null || text.trim() === '' || !seen(parent)) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const metrics = measure(parent, text);
        for (const line of range.getClientRects()) {
          const baseline = line.top + metrics.fontBoundingBoxAscent;
          edges.left = Math.min(edges.left, line.left);
          edges.right = Math.max(edges.right, line.right);
          edges.top = Math.min(edges.top, baseline - metrics.actualBoundingBoxAscent);
          edges.bottom = Math.max(edges.bottom, baseline + metrics.actualBoundingBoxDescent);
        }
      }
      return new DOMRect(edges.left, edges.top, edges.right - edges.left, edges.bottom - edges.top);
    };
    const wrong: string[] = [];
    const { innerWidth, innerHeight } = window;
    const boxes = [
      ...document.querySelectorAll(
        '.stage .play, .stage-where, .strip, .stage-leave, .stage-now, .stage-tones table, .stage-plain > div, .stage-high, .stage-next, .stage-sign .turn, .stage-sign .self-marks .tool, .stage-map .drawing',
      ),
    ].filter(seen);
    const read = [
      ...document.querySelectorAll(
        '.stage-tones .tap > [aria-hidden], .stage-tones .degree, .stage-note, .stage-plain dt, .stage-chord .chord, .stage-next .tap > [aria-hidden], .stage-label, .stage-harp, .stage-sign strong, .call-bar, .ring, .stage-sign p, .stage-sign button, .comb .hole, .comb .inside, .count-number, .strip-names .chord, .stage-where > *',
      ),
    ].filter((element) => seen(element) && element.textContent !== '');
    for (const element of [...boxes, ...read]) {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      if (left < -1 || top < -1 || right > innerWidth + 1 || bottom > innerHeight + 1)
        wrong.push(`${nameOf(element)} leaves the window: ${[left, top, right, bottom].map(Math.round)}`);
    }
    // Letters lie inside the box of their part, so that boxes that do not overlap keep letters apart.
    for (const element of read) {
      const part = element.closest(
        '.stage-now, .stage-tones, .stage-next, .turn, .pill, .strip-line > li, .stage-where, .drawing',
      );
      if (part === null) continue;
      const inner = inkOf(element);
      const outer = part.getBoundingClientRect();
      const out = Math.max(
        outer.left - inner.left,
        outer.top - inner.top,
        inner.right - outer.right,
        inner.bottom - outer.bottom,
      );
      if (out > 1) wrong.push(`${nameOf(element)} leaves ${nameOf(part)} by ${Math.round(out)}`);
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
    for (const cell of document.querySelectorAll('.stage-leave, .stage .play, .self-marks .tool')) {
      if (
        seen(cell) &&
        (cell.scrollWidth > cell.clientWidth + 1 || cell.scrollHeight > cell.clientHeight + 1)
      )
        wrong.push(`${nameOf(cell)} is cut`);
    }
    // A finger marks an answer, on the smallest of screens too.
    for (const mark of document.querySelectorAll('.stage .self-marks .tool')) {
      const { width, height } = mark.getBoundingClientRect();
      if (Math.min(innerWidth, innerHeight) < 700 && Math.min(width, height) < 44)
        wrong.push(`${nameOf(mark)} is ${Math.round(width)} × ${Math.round(height)} px`);
    }
    return { wrong, holes: capOf('.stage-tones .stage-sounds .tap'), chord: capOf('.stage-now .chord') };
  });

interface StageState {
  readonly name: string;
  readonly settings: Partial<Settings>;
}

const FEW: readonly StageState[] = [
  { name: 'playing', settings: {} },
  { name: 'trading', settings: { trade: { on: true, calls: '' } } },
  {
    name: 'playing two long chords a bar',
    settings: {
      formId: 'jazz-bebop',
      harpKey: asPitchClass(6),
      plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0, sounding: 'click', repeat: { from: 7, to: 7 } },
    },
  },
];

const ALL: readonly StageState[] = [
  ...FEW,
  {
    name: 'trading a long call in letters, with another harp next',
    settings: {
      trade: { on: true, calls: "4B:e 4D:e 5B:e 5D:e 6B:q (4D 5D):q | 3D'':e 3D':e 2D:q 2D'':h" },
      tabStyle: 'letters',
      plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0, sounding: 'click', keys: { kind: 'fourths' } },
    },
  },
  { name: 'playing, with the Keys drawing', settings: { drawing: 'keys' } },
  { name: 'playing, in plain words', settings: { plainWords: true } },
];

describe('Stage at every size', () => {
  it.each(inSoak(ALL, FEW).map((state, turn) => ({ ...state, turn })))(
    'cuts and covers nothing while $name, and is read from two metres',
    async ({ settings, turn }) => {
      const page = await openStage(SIZES[0], settings);
      await play(page);
      const found: string[] = [];
      const figures: string[] = [];
      for (const { width, height, cap } of inTurn(SIZES, turn)) {
        await resize(page, [width, height]);
        const wrongNow = async (): Promise<readonly string[]> => {
          const { wrong, holes, chord } = await look(page);
          figures.push(`${width}×${height}: holes ${holes.toFixed(1)}, chord ${chord.toFixed(1)}`);
          return Math.min(holes, chord) < cap ? [...wrong, `capitals of ${holes} and ${chord} px`] : wrong;
        };
        found.push(...(await lasting(wrongNow)).map((each) => `${width}×${height}: ${each}`));
      }
      expect(found, figures.slice(-20).join('; ')).toEqual([]);
    },
  );
});

describe('Stage', () => {
  it('has nothing that axe finds while trading, by day and by night', async () => {
    const page = await openStage(SIZES[0], { trade: { on: true, calls: '' } });
    await play(page);
    const dark = await axeFinds(page, { within: '.stage' });
    await turnTo(page, 'light');
    const light = await axeFinds(page, { within: '.stage', coloursOnly: true });
    expect({ dark, light }).toEqual({ dark: [], light: [] });
  });

  it('marks the bar, the beat and the tones of the chord in colours of the system', async () => {
    const page = await openStage(SIZES[0], {});
    await page.emulateMedia({ forcedColors: 'active' });
    await play(page);
    const drawn = await page.evaluate(() => {
      const styleOf = (selector: string) => {
        const element = document.querySelector(selector);
        if (element === null) throw new Error(`There is no ${selector}`);
        const { backgroundColor, borderTopWidth, borderTopColor } = getComputedStyle(element);
        return { backgroundColor, border: `${borderTopWidth} ${borderTopColor}` };
      };
      const here = styleOf('.strip-line li[aria-current="true"]').backgroundColor;
      const elsewhere = styleOf('.strip-line li:not([aria-current])').backgroundColor;
      const heard = styleOf('.stage-beats i[data-on="true"]');
      const ahead = styleOf('.stage-beats i:not([data-on="true"])');
      return {
        bar: here !== elsewhere,
        ground: getComputedStyle(document.querySelector('.stage-next .stage-label') ?? document.body)
          .forcedColorAdjust,
        beat: JSON.stringify(heard) !== JSON.stringify(ahead),
        degree: styleOf('.stage-tones .degree').border.startsWith('2px'),
        tone: styleOf('.pill[data-role="chord"][data-reach="true"]').border,
        other: styleOf('.pill[data-role="plain"]').border,
      };
    });
    expect(drawn).toMatchObject({ bar: true, beat: true, degree: true, ground: 'none' });
    expect(drawn.tone).not.toBe(drawn.other);
  });

  it('gives the focus back to what had it, and is left by going back, as a panel is', async () => {
    const page = await openStage(SIZES[0], {});
    await page.keyboard.press('Escape');
    await page.getByRole('region', { name: 'Stage' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Stage' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('region', { name: 'Stage' }).waitFor();
    await page.keyboard.press('f');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Stage');
    await page.keyboard.press('f');
    await page.getByRole('region', { name: 'Stage' }).waitFor();
    await page.goBack();
    await page.getByRole('region', { name: 'Stage' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Book', exact: true }).click();
    await page.getByRole('region', { name: 'Songs' }).waitFor();
    await page.goBack();
    await page.getByRole('region', { name: 'Songs' }).waitFor({ state: 'detached' });
  });
});
