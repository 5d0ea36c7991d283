import type { Browser, Page } from 'playwright-core';
import { bench, describe } from 'vitest';
import { bookSong } from '../../src/core/book/book-song';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { benchBrowser, measured } from '../helpers/bench-depth';
import { openEntry } from '../helpers/open-panel';
import { type ServedApp, serveApp } from '../helpers/serve';

const SONGS = Array.from({ length: measured(300, 10) }, (_, i) =>
  bookSong({ id: `song-${i}`, name: `Song number ${i}` }, DEFAULT_SETTINGS, []),
);

/** Rows of the log, over more than a year. */
const ROWS = Array.from({ length: measured(5000, 50) }, (_, i) => {
  const began = Date.UTC(2025, 9, 1) + i * 2 * 3_600_000;
  return {
    ...{ version: 1, id: `log-${i}`, kind: 'song', began, day: new Date(began).toISOString().slice(0, 10) },
    ...{ song: `Song number ${i % 300}`, form: 'Twelve bars', key: 'G', harp: 'C harp', harpKind: 'C' },
    ...{ position: 2, choruses: 4, seconds: 120, heard: null, phrases: [] },
    laps: [{ tempo: 90 + (i % 20), choruses: 4, clean: 2, judged: 4 }],
    bends: [{ sound: "4D'", tries: 5, hits: 3, measured: 5, cents: 10, squares: 900 }],
  };
});

const fill = async ([songs, rows]: readonly [string, readonly object[]]): Promise<void> => {
  localStorage.setItem('combshed.songs', songs);
  const database = await new Promise<IDBDatabase>((resolve) => {
    const request = indexedDB.open('combshed-log', 1);
    request.onsuccess = () => resolve(request.result);
  });
  await new Promise((resolve) => {
    const transaction = database.transaction('rows', 'readwrite');
    for (const row of rows) transaction.objectStore('rows').put(row);
    transaction.oncomplete = resolve;
  });
  database.close();
};

/** A page with a full book, at a quarter of the speed, its Book entry open. */
describe('a book of 300 songs and a log of 5,000 entries, at a quarter of the speed', () => {
  let app: ServedApp;
  let browser: Browser;
  let giveBack: () => Promise<void>;
  let page: Page;
  const options = {
    ...{ time: 0, iterations: measured(8, 1), warmupTime: 0, warmupIterations: 0 },
    setup: async (_: unknown, mode?: 'run' | 'warmup') => {
      if (mode === 'warmup') return;
      app ??= await serveApp();
      ({ browser, giveBack } = await benchBrowser());
      page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
      await page.goto(app.address, { waitUntil: 'networkidle' });
      await openEntry(page, 'Book');
      await page.evaluate(fill, [JSON.stringify(SONGS), ROWS] as const);
      await page.reload({ waitUntil: 'networkidle' });
      await openEntry(page, 'Book');
      const devtools = await page.context().newCDPSession(page);
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: measured(4, 1) });
    },
    teardown: async (_: unknown, mode?: 'run' | 'warmup') => {
      if (mode !== 'warmup') await giveBack();
    },
  };

  /**
   * Presses the way to a page of the panel, and waits until that is drawn. Found by its text alone: to
   * look for roles costs the page as much as the panel does.
   */
  const goTo = (text: string): Promise<void> =>
    page.evaluate(async (name) => {
      const ways = [...document.querySelectorAll<HTMLElement>('.panel-pages button')];
      ways.find((way) => way.textContent === name)?.click();
      await new Promise((drawn) => requestAnimationFrame(() => setTimeout(drawn)));
    }, text);

  bench(
    'the songs open, until they are drawn (with the way back)',
    async () => {
      await goTo('Songs');
      await goTo('Sets');
    },
    options,
  );

  bench(
    'the log opens, until it is drawn (with the way back)',
    async () => {
      await goTo('Log');
      await goTo('Sets');
    },
    options,
  );
});
