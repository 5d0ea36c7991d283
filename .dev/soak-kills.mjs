// A chart is typed, and page or browser are ended in the middle of it: what was typed must be there afterwards.
import { Failure, say } from './run.mjs';
import { endOne, withMortalBrowser } from './soak-mortal.mjs';
import { chance, watch } from './soak-page.mjs';

/**
 * How long ago typed text may be lost, in ms. A page that ends has handed it over. A browser that is ended at once loses
 * what it has not written to the disk: Chromium writes what pages keep 5 s after a change, but no more than 60 times an
 * hour in the long run (its source, StorageAreaImpl; from memory).
 */
const MAY_LOSE = { page: 500, crash: 500, browser: 75_000 };
const TOKENS = ['C7 ', 'F7 ', 'G7 ', '| ', 'Dm7b5 ', 'Bb13 ', '% ', 'A7#9 ', '\n', 'E7/B '];

const openChart = async (context, address) => {
  const page = await context.newPage();
  const errors = await watch(page);
  await page.goto(address, { waitUntil: 'load' });
  await page.getByRole('navigation', { name: 'Panels' }).getByRole('button', { name: 'Chart' }).click();
  return { page, errors };
};

const area = (page) => page.locator('.panel textarea').first();

/** Types until a moment and adds every state of the text with its time. */
const typeUntil = async ({ page, luck, typed }, until) => {
  while (performance.now() < until) {
    await page.keyboard.type(luck.of(TOKENS), { delay: 5 + luck.below(60) });
    typed.push({ at: performance.now(), text: await area(page).inputValue() });
  }
};

const open = async (page) => {
  const chooser = page.getByLabel('Open chart');
  if ((await area(page).count()) === 0 && (await chooser.count()) > 0) {
    const options = await chooser.locator('option').count();
    await chooser.selectOption({ index: options - 1 });
  }
  return (await area(page).count()) > 0 ? area(page).inputValue() : null;
};

/** Milliseconds of typing that a text found afterwards lacks. Throws Failure when it is too much. */
const lossOf = ({ typed, kind }, ended, kept) => {
  const found = typed.findLastIndex(({ text }) => text === kept);
  const next = typed[found + 1];
  const lost = next ? ended - next.at : 0;
  if (lost <= MAY_LOSE[kind]) return lost;
  throw new Failure(
    `A killed ${kind} lost what was typed ${(lost / 1000).toFixed(1)} s before.\nDue:  ${next.text}\nKept: ${kept}`,
  );
};

/** One round: type, end the page or the browser, open again, compare. Resolves with the milliseconds that were lost. */
const round = async (soak) => {
  const { running, address, luck, kind, typed } = soak;
  const { page } = await openChart(running.browser.context, address);
  if ((await open(page)) === null) await page.getByRole('button', { name: 'New', exact: true }).click();
  await area(page).click();
  await page.keyboard.press('ControlOrMeta+A');
  await typeUntil(
    { page, luck, typed },
    performance.now() + 400 + luck.below(kind === 'browser' ? 12_000 : 2500),
  );
  const ended = performance.now();
  await endOne(running, page, kind);
  const { page: again, errors } = await openChart(running.browser.context, address);
  const kept = await open(again);
  if (errors.length > 0) throw new Failure(`After a killed ${kind} the page said: ${errors[0]}`);
  const lost = lossOf(soak, ended, kept);
  await again.close();
  return lost;
};

/** Ends pages and browsers in the middle of typing. Throws Failure when something that should be there is lost. */
export const soakKills = async ({ address, rounds, seed }) => {
  const luck = chance(seed);
  const typed = [];
  const worst = { page: 0, crash: 0, browser: 0 };
  await withMortalBrowser(async (running) => {
    for (let number = 0; number < rounds; number += 1) {
      const kind = ['page', 'crash', 'page', 'browser'][number % 4];
      worst[kind] = Math.max(worst[kind], await round({ running, address, luck, kind, typed }));
    }
  });
  const told = Object.entries(worst).map(([kind, ms]) => `${kind} ${(ms / 1000).toFixed(1)} s`);
  say(`  ${rounds} kills while typing; most lost by a killed ${told.join(', ')}`);
};
