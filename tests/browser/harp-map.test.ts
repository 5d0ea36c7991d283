import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { axeFinds, turnTo } from '../helpers/axe';
import { builtPage } from '../helpers/built-page';
import { lasting, resize, settled } from '../helpers/page-layout';
import { inSoak, inTurn } from '../helpers/soak';

const SIZES = [
  [1440, 900],
  [1366, 768],
  [1180, 820],
  [820, 1180],
  [390, 844],
  [844, 390],
  [720, 450],
] as const;

const { open } = builtPage();

/** What is wrong with the letters of the map: too small, or wider or higher than what they stand in. */
const faultsOf = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const faults: string[] = [];
    for (const element of document.querySelectorAll('.drawing .pill, .drawing .key, .drawing .hole')) {
      const box = element.getBoundingClientRect();
      const name = `${element.getAttribute('data-sound') ?? element.textContent}`;
      for (const each of element.querySelectorAll<HTMLElement>('b, .note, .breath, .key > span')) {
        const inner = each.getBoundingClientRect();
        if (inner.width === 0) continue;
        const size = Number.parseFloat(getComputedStyle(each).fontSize);
        if (size < 14) faults.push(`${name}: ${size} px`);
        const out = Math.max(box.left - inner.left, inner.right - box.right);
        if (out > 1) faults.push(`${name}: ${each.textContent} sticks out by ${out.toFixed(1)} px`);
      }
    }
    return faults;
  });

/** Pairs of sounds whose boxes overlap by more than a border. */
const overlaps = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    for (const drawing of document.querySelectorAll('.drawing')) {
      const boxes = [...drawing.querySelectorAll('.pill')].map((pill) => ({
        id: pill.getAttribute('data-sound'),
        box: pill.getBoundingClientRect(),
      }));
      for (const [i, { id, box }] of boxes.entries()) {
        for (const other of boxes.slice(i + 1)) {
          const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
          const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
          if (wide > 1 && high > 1) found.push(`${id} and ${other.id}`);
        }
      }
    }
    return found;
  });

/** Dots and rings of the comb that lie on the letters of their cell: a hidden flat makes a major third of a minor one. */
const coveredLetters = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const CAPITAL = 0.75;
    const found: string[] = [];
    for (const cell of document.querySelectorAll('.comb .pill')) {
      const box = cell.getBoundingClientRect();
      const edge = Number.parseFloat(getComputedStyle(cell).borderLeftWidth);
      const letters = [...cell.querySelectorAll('b, .note')].find((each) => each.getClientRects().length > 0);
      if (letters === undefined) continue;
      const range = document.createRange();
      range.selectNodeContents(letters);
      const text = range.getBoundingClientRect();
      const high = CAPITAL * Number.parseFloat(getComputedStyle(letters).fontSize);
      for (const sign of ['::before', '::after']) {
        const { content, position, width, top, left, right } = getComputedStyle(cell, sign);
        if (content === 'none' || position !== 'absolute') continue;
        const [size, inward] = [
          Number.parseFloat(width),
          Number.parseFloat(sign === '::before' ? left : right),
        ];
        const under = box.top + edge + Number.parseFloat(top) + size - (text.top + text.bottom - high) / 2;
        const from = sign === '::before' ? text.left - box.left : box.right - text.right;
        const beside = edge + inward + size - from;
        if (under > 1 && beside > 1.5)
          found.push(`${cell.getAttribute('data-sound')}: ${letters.textContent}`);
      }
    }
    return found;
  });

/** How much of a drawing is out of sight below, in words; nothing when it is whole. */
const hiddenBelow = (page: Page): Promise<readonly string[]> =>
  page.locator('.drawing').evaluate(({ scrollHeight, clientHeight }) => {
    const hidden = scrollHeight - clientHeight;
    return hidden < 2 ? [] : [`${hidden} px are out of sight`];
  });

describe('the letters of the map', () => {
  it.each([
    ['comb', 2],
    ['keys', 1],
    ['both', 0],
  ] as const)('of %s are 14 px at least, in their places and apart at every size', async (drawing, turn) => {
    const technique = { drawBends: true, blowBends: true, overbends: true, off: [] };
    const { page } = await open({ settings: { drawing, technique } });
    for (const size of inTurn(SIZES, turn)) {
      await resize(page, size);
      expect(await page.locator('.drawing .pill').count()).toBeGreaterThan(30);
      const faults = async () => [
        ...(await faultsOf(page)),
        ...(await overlaps(page)),
        ...(await coveredLetters(page)),
      ];
      expect(await lasting(faults), size.join(' × ')).toEqual([]);
      if (drawing === 'keys') expect(await lasting(() => hiddenBelow(page)), size.join(' × ')).toEqual([]);
    }
  });
});

/** Where the neighbours of the map are. */
const neighbours = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    ['.chart', '.fit.now', '.fit.next', '.together', '.transport', '.map > header', '.map-foot'].map(
      (each) => `${each} ${JSON.stringify(document.querySelector(each)?.getBoundingClientRect() ?? null)}`,
    ),
  );

/** Chooses another drawing where its button may be out of sight. */
const draw = async (page: Page, name: 'Comb' | 'Keys'): Promise<void> => {
  await page.evaluate((text) => {
    const buttons = [...document.querySelectorAll<HTMLButtonElement>('.map .segments button')];
    buttons.find(({ textContent }) => textContent === text)?.click();
  }, name);
  await page.locator(name === 'Comb' ? '.comb' : '.keys').waitFor();
  await settled(page);
};

describe('another drawing', () => {
  it('moves nothing else on the page at any size', async () => {
    const { page } = await open();
    for (const size of inTurn(SIZES, 0)) {
      await resize(page, size);
      const before = await neighbours(page);
      await draw(page, 'Keys');
      await expect.poll(() => neighbours(page), { message: size.join(' × '), timeout: 5000 }).toEqual(before);
      await draw(page, 'Comb');
    }
  });
});

describe('the Keys drawing', () => {
  it('keeps its hole numbers in view however far it is scrolled', async () => {
    const { page } = await open({
      size: { width: 390, height: 600 },
      settings: { drawing: 'keys' },
    });
    const shown = () =>
      page.evaluate(() => {
        const room = document.querySelector('.drawing')?.getBoundingClientRect().top ?? 0;
        return [...document.querySelectorAll('.keys .hole')].map(
          (hole) => Math.abs(hole.getBoundingClientRect().top - room) < 2,
        );
      });
    for (const top of [0, 60, 5000]) {
      await page.locator('.drawing').evaluate((room, to) => room.scrollTo(0, to), top);
      await expect.poll(shown, { timeout: 5000 }).toEqual(Array.from({ length: 10 }, () => true));
    }
  });
});

describe('the way of a line', () => {
  it.each(inSoak(['comb', 'keys'] as const, ['comb'] as const))(
    'crosses no letters of %s',
    async (drawing) => {
      const line = { ...DEFAULT_SETTINGS.line, kind: 'chord tones', pace: 4 } as const;
      const { page } = await open({ settings: { drawing, line } });
      const crossings = () =>
        page.evaluate(() => {
          const letters = [...document.querySelectorAll('.drawn b, .drawn .note')].map((each) =>
            each.getBoundingClientRect(),
          );
          const frame = document.querySelector('.line-path')?.getBoundingClientRect();
          const ways = [...document.querySelectorAll<SVGPathElement>('.line-path path')];
          const points = ways.flatMap((way) =>
            Array.from({ length: Math.floor(way.getTotalLength()) }, (_, at) => way.getPointAtLength(at)),
          );
          // A line box is higher than the letters in it: theirs is the middle two thirds.
          const through = points.filter(({ x, y }) =>
            letters.some(({ left, right, top, height, width }) => {
              const [px, py] = [x + (frame?.left ?? 0), y + (frame?.top ?? 0)];
              return (
                width > 0 && px > left && px < right && py > top + height / 6 && py < top + (height * 5) / 6
              );
            }),
          );
          return { points: points.length, through: through.length };
        });
      // Letters move when the page's own fonts arrive, and the way follows them a frame later.
      await expect.poll(async () => (await crossings()).points, { timeout: 15_000 }).toBeGreaterThan(50);
      await settled(page);
      await expect.poll(async () => (await crossings()).through, { timeout: 5000 }).toBe(0);
    },
  );
});

describe('the list of signs', () => {
  it('draws the edges of a line around its sounds, and a line for each standing', async () => {
    const { page } = await open();
    await page.getByRole('button', { name: 'Help', exact: true }).click();
    await page.getByRole('button', { name: 'Signs', exact: true }).click();
    const apart = () =>
      page.locator('.sign-list .drawn').evaluate((drawn) => {
        const tops = (name: string) =>
          [...drawn.querySelectorAll(name)].map((each) => each.getBoundingClientRect().top);
        const [pills, rings] = [tops('.pill'), tops('.ring')];
        return rings.length === 2 ? pills.map((top, at) => Math.abs(top - (rings[at] ?? 0)) < 5) : [];
      });
    await expect.poll(apart).toEqual([true, true]);
    const drawn = await page
      .locator('.standing-signs i')
      .evaluateAll((signs) => signs.map((sign) => sign.getBoundingClientRect().width > 20));
    expect(drawn).toEqual([true, true, true]);
  });
});

describe('everyone can use it', () => {
  it('axe finds nothing with both drawings and a chord looked up, light or dark', async () => {
    const { page } = await open({ settings: { drawing: 'both' } });
    await page.getByLabel('Look up').fill('Abm');
    await page.getByRole('region', { name: 'Looked up' }).waitFor();
    expect(await axeFinds(page, { within: '.map' })).toEqual([]);
    await turnTo(page, 'dark');
    expect(await axeFinds(page, { within: '.map', coloursOnly: true })).toEqual([]);
  });

  it('tells the chosen drawing and the degrees without the page’s colours', async () => {
    const { page } = await open({ settings: { drawing: 'both' } });
    await page.emulateMedia({ forcedColors: 'active' });
    // A ground laid behind letters by the system would cut the frames around them.
    const grounds = await page
      .locator('.drawing .pill')
      .evaluateAll((pills) => pills.map((pill) => getComputedStyle(pill).forcedColorAdjust));
    expect(new Set(grounds)).toEqual(new Set(['none']));
    const looks = await page.evaluate(() => {
      const ground = (pressed: string) => {
        const button = document.querySelector(`.segments button[aria-pressed="${pressed}"]`);
        return button === null ? '' : getComputedStyle(button).backgroundColor;
      };
      const frame = (role: string) => {
        const pill = document.querySelector(`.comb .pill[data-role="${role}"][data-reach="true"]`);
        return pill === null ? '' : getComputedStyle(pill).borderTopWidth;
      };
      return { chosen: ground('true'), other: ground('false'), chord: frame('chord'), plain: frame('plain') };
    });
    expect(looks.chosen).not.toBe(looks.other);
    expect(looks.chord).not.toBe(looks.plain);
  });
});
