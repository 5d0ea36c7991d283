import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type PageWatch, watchPage } from '../helpers/browser';
import { spare } from '../helpers/built-page';
import { integratedLoudness } from '../helpers/loudness';
import { servedBrowser } from '../helpers/served-browser';
import { soakIt } from '../helpers/soak';
import { BAND_PRESETS, BAND_SAMPLES, bandSoundFont, makeSoundFont } from '../helpers/sound-font';

const RATE = 44100;

/** Left and right of a 16-bit stereo file, by the offsets of "WAVE PCM soundfile format", Stanford CCRMA. */
const sidesOf = (wav: Buffer): readonly [Float32Array, Float32Array] => {
  const side = (offset: number) =>
    Float32Array.from(
      { length: (wav.length - 44) / 4 },
      (_, i) => wav.readInt16LE(44 + 4 * i + offset) / 2 ** 15,
    );
  return [side(0), side(2)];
};

/** Root of the summed squares of the left side, or of its difference to another. */
const strengthOf = ([left]: readonly [Float32Array, Float32Array], other?: Float32Array): number =>
  Math.sqrt(left.reduce((sum, sample, i) => sum + (sample - (other?.[i] ?? 0)) ** 2, 0));

/** Counts the sounds that are asked of a SoundFont's worker, in the page. */
const countRenderings = (): void => {
  const send = Worker.prototype.postMessage;
  Object.assign(window, { renderings: 0 });
  Worker.prototype.postMessage = function (this: Worker, message: unknown, ...rest: readonly unknown[]) {
    if (typeof message === 'object' && message !== null && 'kind' in message && message.kind === 'render')
      Object.assign(window, { renderings: Reflect.get(window, 'renderings') + 1 });
    Reflect.apply(send, this, [message, ...rest]);
  };
};

describe('sounds of one’s own in the built page', () => {
  const { browser, address } = servedBrowser();
  let visits: BrowserContext;
  let page: Page;
  let watch: PageWatch;
  beforeAll(async () => {
    visits = await browser().newContext({ serviceWorkers: 'block' });
    visits.setDefaultTimeout(120_000);
    await spare(visits);
  });

  const group = () => page.getByRole('group', { name: 'Your own sounds' });
  const visit = async () => {
    page = await visits.newPage();
    watch = watchPage(page);
    await page.addInitScript(countRenderings);
    await page.goto(address());
    await page.getByLabel('Tempo', { exact: true }).fill('240');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Band', exact: true }).click();
  };
  const leave = async () => {
    const { errors, failures } = watch;
    expect({ errors, failures, foreign: watch.foreign(address()) }).toEqual({
      errors: [],
      failures: [],
      foreign: [],
    });
    await page.close();
  };
  const load = (name: string, bytes: Uint8Array) =>
    group()
      .getByLabel('SoundFont file')
      .setInputFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(bytes) });
  const panel = async (name: string) => page.getByRole('button', { name, exact: true }).click();

  /** One chorus as a file. */
  const saveAudio = async () => {
    await panel('Take away');
    const sheet = page.getByRole('region', { name: 'Take away' });
    await sheet.getByLabel('Choruses').selectOption({ label: '1' });
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      sheet.getByRole('button', { name: 'Save audio', exact: true }).click(),
    ]);
    const sides = sidesOf(await readFile(await download.path()));
    await panel('Band');
    return sides;
  };

  const loadHall = async () => {
    await load('hall.sf2', bandSoundFont());
    await group().getByText('Kept in this browser until you forget it.').waitFor();
    for (const part of ['Drums', 'Bass', 'Chords', 'Harp'])
      await expect.poll(() => page.getByLabel(`${part} sound`).inputValue()).toBe('own');
  };
  const visitAgain = async () => {
    await visit();
    await group().getByText('hall.sf2').first().waitFor();
    await group().getByText('Reading').waitFor({ state: 'hidden' });
  };
  const forget = async () => {
    await group().getByRole('button', { name: 'Forget this file' }).click();
    await group().getByRole('button', { name: 'Load a SoundFont' }).waitFor();
    await leave();
  };

  it('plays live from a SoundFont, has it at the next visit, and forgets it when told to', async () => {
    await visit();
    await loadHall();
    await panel('Play');
    await page.locator('[aria-current="true"][aria-label^="Bar 2"]').waitFor();
    await expect.poll(() => page.evaluate(() => Reflect.get(window, 'renderings'))).toBeGreaterThan(20);
    await panel('Stop');
    await leave();

    await visitAgain();
    await forget();

    await visit();
    await group().getByRole('button', { name: 'Load a SoundFont' }).waitFor();
    expect(await group().getByText('hall.sf2').count()).toBe(0);
    await leave();
  });

  soakIt('plays into a file from a SoundFont, as loud as before and the same at the next visit', async () => {
    await visit();
    const before = await saveAudio();
    await loadHall();
    const after = await saveAudio();
    expect(strengthOf(after, before[0])).toBeGreaterThan(0.5 * strengthOf(before));
    expect(Math.abs(integratedLoudness(before, RATE) - integratedLoudness(after, RATE))).toBeLessThan(1.5);
    await leave();

    await visitAgain();
    const again = await saveAudio();
    expect(strengthOf(again, after[0])).toBeLessThan(0.01 * strengthOf(after));
    await forget();
  });

  soakIt('unpacks a compressed SoundFont', async () => {
    await visit();
    const ogg = Uint8Array.from(readFileSync('tests/helpers/tone.ogg'));
    const tone = { name: 'tone', samples: ogg, rate: 22050, root: 69 };
    await load(
      'hall.sf3',
      makeSoundFont(
        BAND_PRESETS.filter(({ name }) => name === 'Piano').map((preset) => ({
          ...preset,
          zones: [{ sample: 0 }],
        })),
        [tone],
      ),
    );
    await group().getByText('hall.sf3').waitFor();
    await expect.poll(() => page.getByLabel('Chords sound').inputValue()).toBe('own');
    await group().getByRole('button', { name: 'Forget this file' }).click();
    await leave();
  });

  soakIt('refuses what cannot be played, in words, and plays on', async () => {
    await visit();
    await panel('Play');
    const stop = page.getByRole('button', { name: 'Stop', exact: true });
    await stop.waitFor();
    const refusal = group().getByRole('alert');
    const whole = bandSoundFont();
    for (const [name, bytes, words] of [
      ['tune.sf2', new TextEncoder().encode('a tune'), /“tune\.sf2” is not a SoundFont/],
      ['half.sf2', whole.subarray(0, 9000), /is not whole: 15 kB are missing/],
      [
        'strings.sf2',
        makeSoundFont([{ ...BAND_PRESETS[0], program: 48 }], BAND_SAMPLES),
        /none of the band’s/,
      ],
    ] as const) {
      await load(name, bytes);
      await expect.poll(() => refusal.textContent()).toMatch(words);
    }
    const huge = join(mkdtempSync(join(tmpdir(), 'sounds-')), 'huge.sf2');
    writeFileSync(huge, '');
    truncateSync(huge, 201e6);
    await group().getByLabel('SoundFont file').setInputFiles(huge);
    await expect
      .poll(() => refusal.textContent())
      .toMatch(/“huge\.sf2” is 201 MB large\. Files up to 200 MB/);
    rmSync(dirname(huge), { recursive: true });
    expect(await stop.isVisible()).toBe(true);
    await panel('Stop');
    await leave();
  });
});
