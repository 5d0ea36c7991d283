import { readFileSync, renameSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { listBuild } from '../../.dev/service-worker.mjs';
import { watchPage } from '../helpers/browser';
import { withoutForehand, withoutInstruments } from '../helpers/built-page';
import { fileBrowser } from '../helpers/served-browser';
import { inSoak, soakDescribe, soakIt } from '../helpers/soak';
import { BAND_PRESETS, makeSoundFont } from '../helpers/sound-font';
import { openVillageServer, type VillageServer } from '../helpers/village-server';

const browser = fileBrowser();
let server: VillageServer;
let context: BrowserContext;

/**
 * Gives a group of tests a server and a browser's store of its own. To have the page kept takes longest, so that the
 * tests of a group go on, in their order, where the one before has left both.
 * @param recorded whether its pages read the recorded instruments, which are kept in any case.
 */
const onOneServer = (recorded: boolean): void => {
  beforeAll(async () => {
    server = await openVillageServer();
    context = await browser().newContext();
    context.setDefaultTimeout(60_000);
    await context.addInitScript(withoutForehand);
    if (!recorded) await context.addInitScript(withoutInstruments);
  });
  afterAll(async () => {
    await context?.close();
    await server?.dispose();
  });
};

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const careLine = (page: Page) => page.getByText(/^(Kept|Not kept|Being kept) for offline use/);

/** Opens the page and waits until it says what became of keeping it. */
const visit = async (says: RegExp = /^Kept for offline use/): Promise<Page> => {
  const page = await context.newPage();
  await page.goto(server.address);
  await press(page, 'Help');
  await press(page, 'Care');
  await expect.poll(() => careLine(page).textContent(), { timeout: 120_000 }).toMatch(says);
  await press(page, 'Help');
  return page;
};

/** Stops the server, and lets the browser forget what it has fetched beside what the page keeps. */
const loseServer = async (page: Page): Promise<void> => {
  await server.stop();
  await expect(fetch(server.address)).rejects.toThrow();
  await (await context.newCDPSession(page)).send('Network.clearBrowserCache');
};

/** Plays fast until the second bar is heard. */
const playOn = async (page: Page): Promise<void> => {
  await page.getByLabel('Tempo', { exact: true }).fill('240');
  await page.keyboard.press('Enter');
  await press(page, 'Play');
  await page.locator('[aria-current="true"][aria-label^="Bar 2"]').waitFor();
};

const saveAudio = async (page: Page): Promise<Buffer> => {
  await press(page, 'Take away');
  const panel = page.getByRole('region', { name: 'Take away' });
  await panel.getByLabel('Choruses').selectOption({ label: '1' });
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    panel.getByRole('button', { name: 'Save audio', exact: true }).click(),
  ]);
  return readFile(await download.path());
};

/** Highest sample of a 16-bit file, 0–1, by the offsets of "WAVE PCM soundfile format", Stanford CCRMA. */
const peakOf = (wav: Buffer): number => {
  let peak = 0;
  for (let at = 44; at + 1 < wav.length; at += 2) peak = Math.max(peak, Math.abs(wav.readInt16LE(at)));
  return peak / 2 ** 15;
};

/** A piano of one compressed sample. */
const compressedPiano = (): Buffer => {
  const samples = Uint8Array.from(readFileSync('tests/helpers/tone.ogg'));
  const piano = BAND_PRESETS.filter(({ name }) => name === 'Piano');
  const tone = { name: 'tone', samples, rate: 22050, root: 69 };
  return Buffer.from(
    makeSoundFont(
      piano.map((preset) => ({ ...preset, zones: [{ sample: 0 }] })),
      [tone],
    ),
  );
};

/** What the browser has kept of this page: path -> headers; one entry for each version. */
const keptShelves = (page: Page) =>
  page.evaluate(async () => {
    const shelves: Record<string, Record<string, string>>[] = [];
    for (const name of await caches.keys()) {
      const cache = await caches.open(name);
      const entries = (await cache.keys()).map(async (request) => {
        const response = await cache.match(request);
        return [
          new URL(request.url).pathname,
          Object.fromEntries([...(response?.headers ?? [])]) as Record<string, string>,
        ] as const;
      });
      shelves.push(Object.fromEntries(await Promise.all(entries)));
    }
    return shelves;
  });

/** A file without which nothing is kept. */
const aFile = (): string => {
  const { files } = listBuild(server.folder);
  const path = files.find(({ path }) => /bank-worker/.test(path))?.path ?? '';
  return join(server.folder, path);
};

const HEADERS = [
  'content-security-policy',
  'content-type',
  'cross-origin-embedder-policy',
  'cross-origin-opener-policy',
  'permissions-policy',
  'x-content-type-options',
];

describe('one visit, then no server', () => {
  onOneServer(true);
  let page: Page;

  it('has every file with the headers it came with', async () => {
    page = await visit();
    const { files } = listBuild(server.folder);
    const [shelf = {}, ...more] = await keptShelves(page);
    expect(more).toEqual([]);
    const { pathname } = new URL(server.address);
    expect(Object.keys(shelf).sort()).toEqual(files.map(({ path }) => pathname + path).sort());
    const workers = Object.keys(shelf).filter((path) => /(font|mp3)-worker/.test(path));
    const compiling = expect.stringContaining('wasm-unsafe-eval');
    expect(workers.map((path) => shelf[path]?.['content-security-policy'])).toEqual([compiling, compiling]);
    for (const { path } of files) {
      const { headers } = await fetch(server.address + path);
      for (const name of HEADERS)
        expect([path, name, shelf[pathname + path]?.[name]]).toEqual([path, name, headers.get(name)]);
    }
  });

  it('plays in the same visit, though the band was not loaded yet', async () => {
    await loseServer(page);
    await playOn(page);
    await press(page, 'Stop');
  });

  it('opens under every address of the page, and answers for no other', async () => {
    for (const address of inSoak(['', 'index.html', '?from=home', '#top'], ['?from=home'])) {
      await page.goto(server.address + address);
      await page.getByRole('button', { name: 'Play' }).waitFor();
    }
    await expect(page.goto(`${server.address}elsewhere.html`)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
    await expect(page.goto(new URL('..', server.address).href)).rejects.toThrow(/ERR_CONNECTION_REFUSED/);
  });

  it('opens again, plays, saves audio, plays from a SoundFont, and prints', async () => {
    page = await visit();
    const { failures } = watchPage(page);
    await page.reload();
    // The page's own headers hold as well: it is shut off from others only where two of them arrived.
    expect(await page.evaluate(() => window.crossOriginIsolated)).toBe(true);
    // What differs below is the sound alone.
    await press(page, 'Band');
    await page.getByLabel('Same take at every Play').check();
    await playOn(page);
    await press(page, 'Stop');
    const built = await saveAudio(page);
    expect(peakOf(built)).toBeGreaterThan(0.1);

    await press(page, 'Band');
    const group = page.getByRole('group', { name: 'Your own sounds' });
    await group
      .getByLabel('SoundFont file')
      .setInputFiles({ name: 'hall.sf3', mimeType: 'application/octet-stream', buffer: compressedPiano() });
    await expect.poll(() => page.getByLabel('Chords sound').inputValue()).toBe('own');
    await press(page, 'Play');
    await page.locator('[aria-current="true"][aria-label^="Bar 2"]').waitFor();
    await press(page, 'Stop');
    const own = await saveAudio(page);
    expect(own.length).toBe(built.length);
    expect(own.equals(built)).toBe(false);

    await page.emulateMedia({ media: 'print' });
    const paper = page.getByRole('article', { name: 'The song on paper' });
    await expect.poll(() => paper.locator('.print-chart li').count()).toBe(12);
    expect(
      await page.evaluate(() => document.fonts.check('16px "Atkinson Hyperlegible Next Variable"')),
    ).toBe(true);
    expect(failures).toEqual([]);
  });
});

describe('a newer version, with two windows open', () => {
  onOneServer(false);
  const offer = (page: Page) => page.getByText('A new version of Combshed is ready.');
  let other: Page;

  it('keeps nothing of a version that cannot be fetched whole and says so, and the next visit keeps all', async () => {
    const file = aFile();
    renameSync(file, `${file}.away`);
    const page = await visit(/^Not kept for offline use: a part could not be fetched/);
    expect(await keptShelves(page)).toEqual([]);
    await page.close();
    renameSync(`${file}.away`, file);
    other = await visit();
    expect((await keptShelves(other)).length).toBe(1);
  });

  it('waits while the band plays, and is used when the player says so and the band has stopped', async () => {
    await server.publish('Combshed, second version');
    const page = await visit();
    await page.bringToFront();
    expect(await page.title()).toBe('Combshed');
    await offer(page).waitFor();
    await page.evaluate(() => Object.assign(window, { sameVisit: true }));
    const sameVisit = () => page.evaluate(() => 'sameVisit' in window);

    await playOn(page);
    await press(page, 'Use the new version');
    await page.getByText(/^The new version comes as soon as the music has stopped/).waitFor();
    await page.locator('[aria-current="true"][aria-label^="Bar 4"]').waitFor();
    expect(await sameVisit()).toBe(true);

    await press(page, 'Stop');
    await expect.poll(() => page.title(), { timeout: 60_000 }).toBe('Combshed, second version');
    expect(await sameVisit()).toBe(false);
    await page.getByRole('button', { name: 'Play' }).waitFor();
    expect(await offer(page).count()).toBe(0);
    expect(await page.getByLabel('Tempo', { exact: true }).inputValue()).toBe('240');
    await loseServer(page);
    await page.reload();
    expect(await page.title()).toBe('Combshed, second version');
    await playOn(page);
    await press(page, 'Stop');
  });

  soakIt('leaves the other window its own parts, and is offered there too', async () => {
    await other.bringToFront();
    await offer(other).waitFor();
    expect(await other.title()).toBe('Combshed');
    await playOn(other);
    await press(other, 'Stop');
    await press(other, 'Use the new version');
    await expect.poll(() => other.title(), { timeout: 60_000 }).toBe('Combshed, second version');
  });
});

soakDescribe('a newer version that cannot be fetched whole', () => {
  onOneServer(false);

  it('leaves the version before in charge, offers nothing, and that version still opens', async () => {
    const before = await visit();
    await before.close();
    await server.publish('Combshed, second version');
    const file = aFile();
    renameSync(file, `${file}.away`);
    const page = await visit();
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update().catch(() => undefined);
    });
    await expect
      .poll(() => page.evaluate(async () => (await navigator.serviceWorker.ready).installing))
      .toBeNull();
    expect(await page.getByText('A new version of Combshed is ready.').count()).toBe(0);
    expect((await keptShelves(page)).length).toBe(1);
    await loseServer(page);
    await page.reload();
    expect(await page.title()).toBe('Combshed');
    await playOn(page);
  });
});
