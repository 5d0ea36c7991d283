import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { encodePcm, wavHeader } from '../../src/core/formats/wav';
import { buildHarp } from '../../src/core/harp/build-harp';
import { RICHTER } from '../../src/core/harp/tunings';
import { askedNotes } from '../../src/core/judging/asked-notes';
import { readPhrase } from '../../src/core/phrase/read-phrase';
import { asPitchClass } from '../../src/core/theory/units';
import { watchPage } from '../helpers/browser';
import { harpSamples } from '../helpers/harp-recording';
import { servedBrowser } from '../helpers/served-browser';

const TEMPO = 200;
const CALL = '-2:q -3 -4 -3 | -2:h r:h';
const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const SAMPLE_RATE = 48_000;

/** RMS of the harp, re full scale: the band comes back in 6 dB below it, which the test measures. */
const HARP_DB = -14.5;

const rms = (samples: Float32Array): number => {
  const sounding = samples.filter((value) => Math.abs(value) > 0.001);
  return Math.sqrt(sounding.reduce((sum, value) => sum + value * value, 0) / Math.max(1, sounding.length));
};

/** The answer as a WAV file: the call as it is asked for, but for what is left out or changed. */
const answerFile = (change: (midi: number, index: number) => number | null): string => {
  const asked = askedNotes(readPhrase(CALL, '4/4').phrase, {
    harp,
    swing: 2,
    secondsPerTick: 60 / TEMPO / 480,
  });
  const notes = asked.flatMap(({ at, length, pitches }, i) => {
    const midi = change(Math.round(pitches[0] ?? 0), i);
    return midi === null ? [] : [{ midi, from: at, to: at + 0.9 * length }];
  });
  const samples = harpSamples(notes, 4);
  const gain = 10 ** (HARP_DB / 20) / rms(samples);
  const format = { sampleRate: SAMPLE_RATE, channels: 1, bits: 16 } as const;
  const pcm = encodePcm([samples.map((value) => gain * value)], 16);
  return Buffer.concat([wavHeader(format, samples.length), pcm]).toString('base64');
};

interface Room {
  /** WAV files, one a turn, in base64. */
  readonly files: readonly string[];
  readonly tempo: number;
}

/**
 * A room before the page's scripts run: what the page plays comes back in through the microphone, and with it a player
 * who plays a file in each of their turns, in time with what is heard. Both take the way that the page believes in.
 */
const inRoom = async (page: Page, room: Room): Promise<void> => {
  await page.addInitScript(({ files, tempo }: Room) => {
    const WAY_IN = 0.01;
    const connect = AudioNode.prototype.connect as (...args: unknown[]) => unknown;
    let air: GainNode | null = null;
    let first = 0;
    AudioNode.prototype.connect = function (this: AudioNode, ...args: unknown[]) {
      if (args[0] instanceof AudioDestinationNode && this.context instanceof AudioContext) {
        air ??= this.context.createGain();
        connect.call(this, air);
      }
      return connect.apply(this, args);
    } as typeof AudioNode.prototype.connect;
    const start = AudioBufferSourceNode.prototype.start;
    const play = async (context: AudioContext, into: AudioNode): Promise<void> => {
      const beat = 60 / tempo;
      for (const [turn, file] of files.entries()) {
        const bytes = Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0));
        const source = context.createBufferSource();
        source.buffer = await context.decodeAudioData(bytes.buffer);
        connect.call(source, into);
        // A bar is counted in; then two bars of call and two of answer in turn.
        start.call(source, first + beat * (4 + 8 + 16 * turn));
      }
    };
    AudioBufferSourceNode.prototype.start = function (this: AudioBufferSourceNode, when = 0, ...rest) {
      if (first === 0 && when > 0 && this.context instanceof AudioContext) {
        first = when;
      }
      return start.call(this, when, ...rest);
    };
    navigator.mediaDevices.getUserMedia = async () => {
      if (air === null || !(air.context instanceof AudioContext)) throw new DOMException('', 'NotFoundError');
      const { context } = air;
      const ear = context.createMediaStreamDestination();
      const way = context.createDelay(1);
      connect.call(air, way);
      connect.call(way, ear);
      for (const track of ear.stream.getTracks()) {
        const settings = track.getSettings.bind(track);
        track.getSettings = () => ({ ...settings(), latency: WAY_IN });
      }
      const meter = context.createAnalyser();
      connect.call(air, meter);
      const heard = new Float32Array(meter.fftSize);
      const leak = { squares: 0, count: 0 };
      Object.assign(window, { leak });
      const wait = (): void => {
        // The page learns how late its output is once it plays, and so does the room.
        way.delayTime.value = WAY_IN + (context.outputLatency || 0.02);
        if (first > 0 && context.currentTime > first + 1) void play(context, way).then(listen);
        else setTimeout(wait, 20);
      };
      const listen = (): void => {
        meter.getFloatTimeDomainData(heard);
        for (const value of heard) leak.squares += value * value;
        leak.count += heard.length;
        setTimeout(listen, 30);
      };
      wait();
      return ear.stream;
    };
  }, room);
};

describe('trading in a browser', () => {
  const { browser, address } = servedBrowser();

  const visit = async (context: BrowserContext, files: readonly string[]) => {
    context.setDefaultTimeout(60_000);
    const page = await context.newPage();
    const watch = watchPage(page);
    await inRoom(page, { files, tempo: TEMPO });
    await page.goto(address());
    return { page, watch };
  };

  /** dB of the band in the room, re the harp. */
  const leakOf = async (page: Page): Promise<number> => {
    const power = await page.evaluate(() => {
      const { leak } = window as unknown as { leak: { squares: number; count: number } };
      return leak.squares / leak.count;
    });
    return 10 * Math.log10(power) - HARP_DB;
  };

  it('hears echoes over the band at −6 dB as they were played: a note missing, all of it right, another note', async () => {
    const context = await browser().newContext({ permissions: ['microphone'], serviceWorkers: 'block' });
    const turns = [
      {
        file: answerFile((midi, i) => (i === 2 ? null : midi)),
        says: 'The third note did not sound, 4 draw',
      },
      { file: answerFile((midi) => midi), says: 'All of it, in tune and in time.' },
      {
        file: answerFile((midi, i) => (i === 3 ? 72 : midi)),
        says: 'The fourth note was 4 blow instead of 3 draw',
      },
    ];
    const { page, watch } = await visit(
      context,
      // Again and again: a machine that is busy may lose a note of one turn.
      Array.from({ length: 5 }, () => turns.map(({ file }) => file)).flat(),
    );
    await page.getByRole('button', { name: 'Practise', exact: true }).click();
    await page.getByLabel('Trade with the harp voice').click();
    await page.getByLabel(/Your own calls/).fill(CALL);
    await page.getByLabel('Tempo', { exact: true }).fill(String(TEMPO));
    await page.keyboard.press('Tab');
    await page.getByRole('button', { name: 'Listen with the microphone' }).click();
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    for (const { says } of turns)
      await expect
        .poll(() => page.locator('body').textContent(), { timeout: 40_000, interval: 50 })
        .toContain(says);
    const leak = await leakOf(page);
    expect(leak).toBeGreaterThan(-7);
    expect(leak).toBeLessThan(-4);
    expect(watch.errors).toEqual([]);
    await context.close();
  }, 90_000);
});
