import { readFile } from 'node:fs/promises';
import type { Download, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type PageWatch, watchPage } from '../helpers/browser';
import { spare } from '../helpers/built-page';
import { eventsOf, notesOf, readMidi } from '../helpers/midi-reading';
import { servedBrowser } from '../helpers/served-browser';
import { inSoak, soakIt } from '../helpers/soak';

const BPM = 240;
const BEAT = 60 / BPM;
const BAR = 4 * BEAT;
/** Twelve bars. */
const CHORUS = 12 * BAR;

interface Wav {
  readonly rate: number;
  readonly bits: number;
  readonly seconds: number;
  /** Whole bytes as the header says. */
  readonly exact: boolean;
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** Reads by the offsets of "WAVE PCM soundfile format", Stanford CCRMA. */
const readWav = (bytes: Buffer): Wav => {
  const [rate, bits, data] = [bytes.readUInt32LE(24), bytes.readUInt16LE(34), bytes.readUInt32LE(40)];
  const size = bits / 8;
  const frames = data / (2 * size);
  const side = (offset: number) =>
    Float64Array.from(
      { length: frames },
      (_, i) => bytes.readIntLE(44 + (2 * i + offset) * size, size) / 2 ** (bits - 1),
    );
  return {
    rate,
    bits,
    seconds: frames / rate,
    // A list of information follows the samples (RIFF, LIST INFO).
    exact:
      bytes.readUInt32LE(4) === bytes.length - 8 &&
      bytes.toString('latin1', 44 + data, 48 + data) === 'LIST' &&
      bytes.readUInt32LE(48 + data) === bytes.length - data - 52,
    left: side(0),
    right: side(1),
  };
};

/** Root mean square of both sides between two times in seconds. */
const levelOf = ({ left, right, rate }: Wav, from: number, to: number): number => {
  let sum = 0;
  const [first, last] = [Math.round(from * rate), Math.min(left.length, Math.round(to * rate))];
  for (let i = first; i < last; i += 1) sum += ((left[i] ?? 0) ** 2 + (right[i] ?? 0) ** 2) / 2;
  return Math.sqrt(sum / (last - first));
};

const bytesOf = async (download: Download): Promise<Buffer> => readFile(await download.path());

const OPUS = { kind: 'Opus in Ogg', extension: 'opus', rate: 128 };
const MP3 = { kind: 'MP3', extension: 'mp3', rate: 192 };

describe('taking a song away from the built page', () => {
  const { browser, address } = servedBrowser();
  let page: Page;
  let watch: PageWatch;

  const panel = () => page.getByRole('region', { name: 'Take away' });
  const press = (name: string) => panel().getByRole('button', { name, exact: true }).click();
  const choose = (label: string, text: string) => panel().getByLabel(label).selectOption({ label: text });
  const mute = async (parts: readonly string[]) => {
    await page.getByRole('button', { name: 'Band', exact: true }).click();
    await page.getByRole('button', { name: 'Mixer', exact: true }).click();
    for (const part of parts) await page.getByRole('button', { name: `Mute ${part}` }).click();
    await page.getByRole('button', { name: 'Close' }).click();
  };
  const downloads = (count: number): Promise<readonly Download[]> =>
    new Promise((resolve) => {
      const got: Download[] = [];
      page.on('download', (download) => {
        if (got.push(download) === count) resolve(got);
      });
    });
  const save = async (button: string): Promise<{ name: string; bytes: Buffer }> => {
    const [download] = await Promise.all([page.waitForEvent('download'), press(button)]);
    return { name: download.suggestedFilename(), bytes: await bytesOf(download) };
  };

  const open = async (muted: readonly string[] = []) => {
    page = await browser().newPage({ serviceWorkers: 'block' });
    page.setDefaultTimeout(120_000);
    watch = watchPage(page);
    // The computed instruments alone: whether the recorded ones are here in time would be another matter each time.
    await spare(page);
    await page.goto(address());
    await page.getByLabel('Tempo', { exact: true }).fill(String(BPM));
    await page.keyboard.press('Enter');
    if (muted.length > 0) await mute(muted);
    await page.getByRole('button', { name: 'Take away' }).click();
    await choose('Choruses', '1');
  };
  const close = async () => {
    const foreign = watch.foreign(address());
    expect({ ...watch, requests: [], foreign }).toEqual({
      errors: [],
      failures: [],
      requests: [],
      foreign: [],
    });
    await page.close();
  };

  it('saves MIDI that an independent reader understands', async () => {
    await open();
    const { name, bytes } = await save('Save MIDI');
    expect(name).toBe('shuffle-g-240bpm.mid');
    const { format, ticksPerBeat, tracks } = readMidi(bytes);
    expect([format, ticksPerBeat]).toEqual([1, 480]);
    expect(eventsOf(tracks[0], 'setTempo')[0]?.microsecondsPerBeat).toBe(60_000_000 / BPM);
    const names = tracks.slice(1).map((track) => track.name);
    expect(names.toSorted()).toEqual(['Bass', 'Chords', 'Drums']);
    for (const track of tracks.slice(1)) expect(notesOf(track).length).toBeGreaterThan(10);
    await close();
  });

  it('saves a WAV file while the band goes on playing', async () => {
    await open();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const stop = page.getByRole('button', { name: 'Stop', exact: true });
    await stop.waitFor();
    const { name, bytes } = await save('Save audio');
    await page.getByText('shuffle-g-240bpm.wav is in your downloads.').waitFor();
    expect(await stop.isVisible()).toBe(true);
    expect(name).toBe('shuffle-g-240bpm.wav');
    const wav = readWav(bytes);
    expect([wav.rate, wav.bits, wav.exact]).toEqual([44100, 16, true]);
    // A bar of count-in, twelve bars, a last chord of about three seconds, and what rings after it.
    expect(wav.seconds).toBeGreaterThan(BAR + CHORUS + 2);
    expect(wav.seconds).toBeLessThan(BAR + CHORUS + 12);
    for (let bar = 0; bar < 13; bar += 1) {
      expect(levelOf(wav, bar * BAR, (bar + 1) * BAR)).toBeGreaterThan(0.005);
    }
    expect(levelOf(wav, wav.seconds - 0.02, wav.seconds)).toBeLessThan(0.001);
    const peak = wav.left.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(peak).toBeGreaterThan(0.1);
    expect(peak).toBeLessThan(1);
    await close();
  });

  soakIt('saves one file a part in the chosen form: the bass waits while the count goes on', async () => {
    await open(['Chords']);
    await choose('Sample rate', '48 kHz');
    await choose('Bit depth', '24 bit');
    await choose('Files', 'One for each part');
    const [files] = await Promise.all([downloads(2), press('Save audio')]);
    const names = files.map((file) => file.suggestedFilename());
    expect(names).toEqual(['drums', 'bass'].map((part) => `shuffle-g-240bpm-${part}.wav`));
    const [drums, bass] = await Promise.all(files.map(async (file) => readWav(await bytesOf(file))));
    if (!drums || !bass) throw new Error('Two files were promised');
    expect([bass.rate, bass.bits, bass.exact]).toEqual([48000, 24, true]);
    expect(levelOf(drums, 0, 0.9 * BAR)).toBeGreaterThan(0.005);
    expect(levelOf(bass, 0, 0.9 * BAR)).toBeLessThan(1e-5);
    expect(levelOf(bass, BAR, 2 * BAR)).toBeGreaterThan(0.005);
    await close();
  });

  /** What the browser's own decoder makes of a file. */
  const decoded = (bytes: Buffer) =>
    page.evaluate(async (base64) => {
      const data = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
      const context = new OfflineAudioContext(2, 1, 48000);
      const buffer = await context.decodeAudioData(data.buffer);
      const samples = buffer.getChannelData(0);
      const level = Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);
      return { frames: buffer.length, channels: buffer.numberOfChannels, level };
    }, bytes.toString('base64'));

  it('saves compressed choruses to go round that the browser’s own decoder plays, to the frame', async () => {
    await open(['Drums', 'Chords']);
    await panel().getByLabel('With count-in').uncheck();
    await panel().getByLabel('With ending').uncheck();
    for (const { kind, extension, rate } of inSoak([OPUS, MP3], [MP3])) {
      await choose('Kind of file', `${kind}, compressed, ${rate} kbit/s`);
      const { name, bytes } = await save('Save audio');
      expect(name).toBe(`shuffle-g-240bpm.${extension}`);
      const { channels, frames, level } = await decoded(bytes);
      expect([channels, frames]).toEqual([2, CHORUS * 48000]);
      expect(level).toBeGreaterThan(0.01);
      expect(bytes.length).toBeLessThan(CHORUS * rate * 135);
    }
    await close();
  });

  soakIt('cancels a long file, keeps nothing of it and can save again', async () => {
    await open();
    await choose('Choruses', '64');
    const started: string[] = [];
    page.on('download', (download) => started.push(download.suggestedFilename()));
    await press('Save audio');
    const bar = panel().getByRole('progressbar', { name: 'Making shuffle-g-240bpm.wav' });
    const share = async () => Number(await bar.getAttribute('value'));
    await expect.poll(share, { timeout: 60_000 }).toBeGreaterThan(0);
    await press('Cancel');
    await panel().getByText('Cancelled. What was not finished is not kept.').waitFor();
    await bar.waitFor({ state: 'detached' });
    const leftOnDisk = () =>
      page.evaluate(async () => {
        const folder = await (await navigator.storage.getDirectory()).getDirectoryHandle('take-away');
        const names: string[] = [];
        for await (const name of folder.keys()) names.push(name);
        return names;
      });
    await expect.poll(leftOnDisk, { timeout: 60_000 }).toEqual([]);
    expect(started).toEqual([]);
    expect((await save('Save lead sheet')).name).toBe('shuffle-g-240bpm.musicxml');
    await close();
  });
});
