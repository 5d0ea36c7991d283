// A song is played, and page or browser are ended in the middle of it: the log may lose the bar being played, and no more.
import { Failure, say } from './run.mjs';
import { endOne, withMortalBrowser } from './soak-mortal.mjs';
import { chance, watch } from './soak-page.mjs';

/** Beats a minute, and how long a bar of four lasts. */
const TEMPO = 240;
const BAR_MS = (4 * 60_000) / TEMPO;
/** A bar that began so shortly before is still on its way to the disk, in ms: a busy machine takes as long. */
const ON_ITS_WAY = 400;

/** Runs in the page: notes when each bar is shown to begin. */
const noteBars = () => {
  const head = document.querySelector('article.fit.now h2');
  const bars = [];
  Object.assign(window, { bars });
  new MutationObserver(() => bars.push(performance.now())).observe(head, {
    subtree: true,
    childList: true,
    characterData: true,
  });
};

/** Runs in the page before its own scripts: notes when something was last asked of the database and when it was done. */
const noteWrites = () => {
  const writes = { asked: 0, done: 0 };
  Object.assign(window, { writes });
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...given) {
    writes.asked = performance.now();
    this.transaction.addEventListener('complete', () => {
      writes.done = performance.now();
    });
    return put.apply(this, given);
  };
};

/** Runs in the page: every entry on the disk. */
const readLog = async () => {
  const database = await new Promise((resolve, reject) => {
    const request = indexedDB.open('combshed-log', 1);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const rows = await new Promise((resolve, reject) => {
    const request = database.transaction('rows').objectStore('rows').getAll();
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  database.close();
  return rows;
};

/** How often a page that does not come up is opened anew: on a busy machine the driver misses that it is there. */
const TIMES = 3;

const openPage = async (running, address, time = 1) => {
  const page = await running.browser.context.newPage();
  const errors = await watch(page);
  await page.addInitScript(noteWrites);
  try {
    await page.goto(address, { waitUntil: 'load', timeout: 30_000 });
  } catch (error) {
    if (time === TIMES) throw error;
    await page.close();
    return openPage(running, address, time + 1);
  }
  return { page, errors };
};

/** Plays for a while. Resolves with the milliseconds from the first bar shown to the last, and from that until now. */
const play = async (page, ms) => {
  await page.getByLabel('Tempo', { exact: true }).fill(String(TEMPO));
  await page.keyboard.press('Enter');
  await page.evaluate(noteBars);
  await page.getByRole('button', { name: 'Play', exact: true }).click();
  await page.waitForFunction(() => window.bars.length > 0, null, { timeout: 60_000 });
  await page.waitForTimeout(ms);
  return page.evaluate(() => ({
    whole: window.bars.at(-1) - window.bars[0],
    since: performance.now() - window.bars.at(-1),
    asked: performance.now() - window.writes.asked,
    done: performance.now() - window.writes.done,
  }));
};

/** How long the browser's database has owed an answer, in ms: on a machine that is busy otherwise it may be seconds. */
const owed = ({ asked, done }) => (asked < done ? asked : 0);

/** What is wrong with the log after a kill, in words; nothing where all is well. */
const flawOf = (played, before, after) => {
  const { whole, since, asked, done } = played;
  const ids = new Set(after.map(({ id }) => id));
  if (ids.size !== after.length) return 'an entry stands there twice';
  const changed = before.find((row) => {
    const now = after.find(({ id }) => id === row.id);
    return JSON.stringify(now) !== JSON.stringify(row);
  });
  if (changed !== undefined) return `an earlier entry changed or went: ${JSON.stringify(changed)}`;
  const fresh = after.filter(({ id }) => !before.some((row) => row.id === id));
  if (fresh.length !== 1) return `${fresh.length} entries were written of one playing`;
  const waiting = owed(played);
  // What was never answered for is the browser's; all before is due, but for the bar being played.
  const due =
    whole -
    (since < ON_ITS_WAY || waiting > 0 ? BAR_MS : 0) -
    Math.max(0, waiting > 0 ? done - since - BAR_MS : 0);
  const kept = fresh[0].seconds * 1000;
  // What is shown and what is counted are told in the same turn, give or take a frame of a busy machine.
  return kept < due - ON_ITS_WAY
    ? `${kept.toFixed(0)} ms were kept of ${whole.toFixed(0)}; written last ${asked.toFixed(0)} ms before, safe last ${done.toFixed(0)} ms before`
    : null;
};

/** Ends pages and browsers in mid-session. Throws Failure when the log lost more than the bar being played. */
export const soakLog = async ({ address, rounds, seed }) => {
  const luck = chance(seed);
  let worst = 0;
  let stalls = 0;
  const flags = ['--autoplay-policy=no-user-gesture-required'];
  await withMortalBrowser(async (running) => {
    let before = [];
    for (let number = 0; number < rounds; number += 1) {
      const kind = ['page', 'browser', 'crash'][number % 3];
      const { page, errors } = await openPage(running, address);
      const played = await play(page, 6500 + luck.below(5000));
      if (errors.length > 0) throw new Failure(`Before the page was ended it said: ${errors[0]}`);
      await endOne(running, page, kind);
      const { page: again } = await openPage(running, address);
      const after = await again.evaluate(readLog);
      const flaw = flawOf(played, before, after);
      if (flaw !== null) throw new Failure(`A killed ${kind} (${number + 1} of ${rounds}): ${flaw}.`);
      const fresh = after.find(({ id }) => !before.some((row) => row.id === id));
      if (owed(played) > BAR_MS) stalls += 1;
      else worst = Math.max(worst, played.whole + played.since - fresh.seconds * 1000);
      before = after;
      await again.close();
      if (kind === 'crash') await page.close().catch(() => {});
    }
  }, flags);
  const told = `a log lost ${(worst / 1000).toFixed(2)} s at most, a bar being ${BAR_MS / 1000} s`;
  say(`  ${rounds} kills in mid-session; ${told}`);
  if (stalls > 0)
    say(
      `  ${stalls} of them while the browser's database had owed an answer for longer: what it owed is lost`,
    );
};
