import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findFirefox } from '../../.dev/firefox.mjs';
import { DEFAULT_SETTINGS } from '../../src/core/settings/defaults';
import { storableSettings } from '../../src/core/settings/parse-settings';
import { asBpm } from '../../src/core/theory/units';
import { notesOf, readMidi } from '../helpers/midi-reading';
import { type ServedApp, serveApp } from '../helpers/serve';

/** Files are saved to a folder without a question, and sound goes to a device that is not there. */
const preferences = (folder: string) => ({
  'browser.download.folderList': 2,
  'browser.download.dir': folder,
  'browser.download.always_ask_before_handling_new_types': false,
  // Where a machine has no sound device, sound would not start at all.
  'media.cubeb.force_mock_context': true,
});

const SETTINGS = storableSettings({
  ...DEFAULT_SETTINGS,
  tempo: asBpm(240),
  plan: { ...DEFAULT_SETTINGS.plan, countInBars: 0 },
});

describe('the built page in Firefox', () => {
  let folder: string;
  let served: ServedApp;
  let browser: Browser;
  let page: Page;
  const errors: string[] = [];

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'firefox-files-'));
    served = await serveApp();
    const executablePath = await findFirefox();
    if (executablePath === null) throw new Error('There is no Firefox here; FIREFOX_PATH can name one.');
    browser = await puppeteer.launch({
      browser: 'firefox',
      executablePath,
      headless: true,
      extraPrefsFirefox: preferences(folder),
    });
    page = await browser.newPage();
    page.setDefaultTimeout(120_000);
    await page.setViewport({ width: 1280, height: 800 });
    page.on('pageerror', (error) => errors.push(String(error)));
    await page.goto(served.address);
    await page.evaluate((kept) => {
      localStorage['combshed.settings'] = kept;
    }, JSON.stringify(SETTINGS));
    await page.reload();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.dispose();
    await rm(folder, { recursive: true, force: true });
  });

  // By its words: to ask for a role has Firefox keep its tree for screen readers from then on, which takes its time.
  const press = (name: string) => page.locator(`::-p-xpath(//button[normalize-space()="${name}"])`).click();
  const currentBar = () =>
    page.$eval('[aria-current="true"]', (bar) =>
      Number(/\d+/.exec(bar.getAttribute('aria-label') ?? '')?.[0]),
    );

  const waitFor = async <Value>(look: () => Promise<Value | null>, seconds: number): Promise<Value> => {
    for (const end = performance.now() + seconds * 1000; performance.now() < end; ) {
      const value = await look();
      if (value !== null) return value;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
    throw new Error(`Nothing came within ${seconds} seconds`);
  };

  /** The bytes of a saved file, once it is whole. */
  const saved = (ending: string): Promise<Buffer> =>
    waitFor(async () => {
      const names = await readdir(folder);
      const name = names.find((each) => each.endsWith(ending));
      if (name === undefined || names.some((each) => each.endsWith('.part'))) return null;
      const bytes = await readFile(join(folder, name));
      return bytes.length === 0 ? null : bytes;
    }, 170);

  it('plays, and the bar moves on', async () => {
    await press('Play');
    await waitFor(async () => ((await currentBar()) >= 3 ? true : null), 120);
    const before = await currentBar();
    await waitFor(async () => ((await currentBar()) === before ? null : true), 30);
    await press('Stop');
    expect(errors).toEqual([]);
  });

  it('saves MIDI that another reader reads', async () => {
    await press('Take away');
    await press('Save MIDI');
    const { tracks } = readMidi(await saved('.mid'));
    expect(tracks.flatMap(notesOf).length).toBeGreaterThan(100);
  });

  it('saves audio that sounds', async () => {
    await press('Save audio');
    const bytes = await saved('.wav');
    expect(bytes.toString('latin1', 0, 4) + bytes.toString('latin1', 8, 12)).toBe('RIFFWAVE');
    const second = Array.from({ length: 48_000 }, (_, i) => bytes.readInt16LE(44 + 4 * (96_000 + i)));
    expect(Math.max(...second)).toBeGreaterThan(3000);
    expect(errors).toEqual([]);
  });

  it('opens and plays with the server gone', async () => {
    await page.evaluate(async () => {
      await navigator.serviceWorker.ready;
    });
    await served.dispose();
    await page.reload();
    await press('Play');
    await waitFor(async () => ((await currentBar()) >= 2 ? true : null), 120);
    await press('Stop');
    expect(errors).toEqual([]);
  });
});
