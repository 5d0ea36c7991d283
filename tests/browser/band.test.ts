import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import type { Program } from '../../src/core/arranger/program';
import type { PartId } from '../../src/core/score/score';
import type { BandSound } from '../../src/core/song/band-sound';
import { hzOf } from '../../src/core/theory/temperament';
import { serveBandPage } from '../helpers/band-page';
import { launchBrowser, type PageWatch, watchPage } from '../helpers/browser';
import {
  amplitudeAt,
  blockLevels,
  floatsFrom,
  longestBelow,
  peakBetween,
  riseBetween,
  sharpestBend,
} from '../helpers/samples';
import type { ServedApp } from '../helpers/serve';
import { testChart, testProgram } from '../helpers/test-charts';

/** Only these parts are heard, each at its resting place. */
const soundOf = (...parts: readonly PartId[]): BandSound => {
  const { drums, bass, chords, lead, click } = RESTING_SOUND.mix.channels;
  const heard = (part: PartId, channel: typeof drums) => ({
    ...channel,
    gain: 0.75,
    muted: !parts.includes(part),
  });
  const channels = {
    drums: heard('drums', drums),
    bass: heard('bass', bass),
    chords: heard('chords', chords),
    lead: heard('lead', lead),
    click: heard('click', click),
  };
  return { ...RESTING_SOUND, mix: { ...RESTING_SOUND.mix, channels } };
};

const shuffle = (key: number, tempo: number): Program =>
  testProgram('shuffle', {
    chart: testChart('standard', key),
    tempo,
    plan: { countInBars: 1, choruses: null },
  });

interface Recorded {
  readonly from: number;
  readonly sampleRate: number;
  readonly samples: Float32Array;
  /** Index of the sample at a time of the audio clock. */
  readonly at: (seconds: number) => number;
}

describe('the band in a page', () => {
  let browser: Browser;
  let served: ServedApp;
  let page: Page;
  let watch: PageWatch;

  beforeAll(async () => {
    served = await serveBandPage();
    browser = await launchBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.dispose();
  });
  beforeEach(async () => {
    page = await browser.newPage();
    watch = watchPage(page);
  });
  afterEach(async () => {
    await page.close();
  });

  const open = async () => {
    await page.goto(served.address);
    await page.waitForFunction(() => 'bench' in window);
  };

  /** Opens the page and makes the gesture that browsers ask for before sound. */
  const openAwake = async () => {
    await open();
    await page.click('#gesture');
  };

  const recorded = async (): Promise<Recorded> => {
    const { from, sampleRate, pcm, skipped } = await page.evaluate(() => window.bench.recorded());
    expect(skipped).toBe(0);
    const samples = floatsFrom(pcm);
    return { from, sampleRate, samples, at: (seconds) => Math.round(seconds * sampleRate) - from };
  };

  const moment = () => page.evaluate(() => window.bench.moment());
  const play = (program: Program, sound: BandSound, fromBar = 0) =>
    page.evaluate(([given, chosen, bar]) => window.bench.band.play(given, chosen, bar), [
      program,
      sound,
      fromBar,
    ] as const);
  const wait = (milliseconds: number) => page.evaluate((given) => window.bench.wait(given), milliseconds);

  it('plays in time with the page blocked for a second at a time, and calls every bar when it is heard', async () => {
    await openAwake();
    expect(await play(shuffle(7, 120), soundOf('click', 'drums'))).toEqual({ kind: 'playing' });
    await wait(1000);
    await page.evaluate(() => window.bench.block(1000));
    await wait(300);
    await page.evaluate(() => window.bench.block(1400));
    await wait(2500);
    const { late } = await page.evaluate(() => window.bench.counts());
    const bars = await page.evaluate(() => window.bench.bars);
    const { samples, at, sampleRate, from } = await recorded();
    expect(late).toBe(0);

    const first = riseBetween(samples, 0, samples.length, 0.1);
    const beats = Array.from({ length: 10 }, (_, beat) => first + beat * 0.5 * sampleRate);
    const errors = beats
      .slice(0, 4)
      .map(
        (beat) =>
          (riseBetween(samples, beat - 0.05 * sampleRate, beat + 0.05 * sampleRate) - beat) / sampleRate,
      );
    expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.003);
    const quiet = beats.slice(4).filter((beat) => peakBetween(samples, beat, beat + 0.1 * sampleRate) < 0.01);
    expect(quiet).toEqual([]);

    const start = (first + from) / sampleRate;
    expect(at(start)).toBe(first);
    expect(bars.slice(0, 2).map(({ heard }) => heard && [heard.kind, heard.bar])).toEqual([
      ['count-in', 0],
      ['chorus', 0],
    ]);
    const called = bars.map(({ outputTime }, bar) => outputTime - start - bar * 2);
    expect(Math.min(...called)).toBeGreaterThan(-0.05);
    // The page was blocked over the first bar lines; the last was met by the timer.
    expect(called.at(-1)).toBeLessThan(0.1);
  });

  it('goes on in another key from the same place, without a gap and without a click', async () => {
    await openAwake();
    await play(shuffle(7, 120), soundOf('bass'));
    await wait(4300);
    const changed = await page.evaluate(
      async (program) => {
        const before = window.bench.moment();
        window.bench.band.change(program);
        await window.bench.wait(1500);
        const position = window.bench.band.playhead();
        return { before, after: window.bench.moment(), section: position?.section ?? null };
      },
      shuffle(1, 120),
    );
    await wait(400);
    const { samples, at, sampleRate } = await recorded();
    const { before, after, section } = changed;

    expect(section?.chart.key).toBe(1);
    const gone = (after.heard?.ticks ?? 0) - (before.heard?.ticks ?? 0);
    expect(Math.abs(gone / 960 - (after.outputTime - before.outputTime))).toBeLessThan(0.08);

    const cut = at(before.currentTime);
    const steady = samples.slice(at(before.currentTime - 1.5), cut);
    const over = samples.slice(cut, cut + sampleRate);
    const block = Math.round(sampleRate / 100);
    const gap = (stretch: Float32Array) => longestBelow(blockLevels(stretch, block), 0.002) * 10;
    expect(gap(over)).toBeLessThanOrEqual(gap(steady) + 20);
    expect(sharpestBend(samples, cut, cut + 0.4 * sampleRate)).toBeLessThan(
      1.5 * sharpestBend(samples, at(before.currentTime - 2), cut),
    );

    const sounding = section?.score.events.find(
      ({ part, at: tick }) => part === 'bass' && tick > (after.heard?.ticks ?? 0) - 480,
    );
    if (!sounding || !after.heard) throw new Error('the bass plays on every beat');
    const began = after.outputTime + (sounding.at - after.heard.ticks) / 960;
    const note = samples.slice(at(began + 0.06), at(began + 0.3));
    const right = amplitudeAt(note, sampleRate, hzOf(sounding.pitch));
    expect(right).toBeGreaterThan(0.003);
  });

  it('changes an instrument and the temperament while playing without a gap', async () => {
    await openAwake();
    // A feel whose chords never rest for half a second: what is silent longer is a gap.
    const steady = testProgram('double-shuffle', { plan: { choruses: null } });
    const sound = { ...soundOf('chords'), chords: 'organ' as const };
    await play(steady, sound);
    await wait(2000);
    const before = await moment();
    await page.evaluate((chosen) => window.bench.band.setSound(chosen), {
      ...sound,
      temperament: { ...sound.temperament, reference: 444 as never },
    });
    await wait(1200);
    await page.evaluate((chosen) => window.bench.band.setSound(chosen), {
      ...sound,
      chords: 'piano' as const,
    });
    await wait(1700);
    const counts = await page.evaluate(() => window.bench.counts());
    expect(counts.late).toBe(0);
    const { samples, at, sampleRate } = await recorded();
    const levels = blockLevels(samples.slice(at(before.currentTime)), Math.round(sampleRate / 100));
    expect(levels.length).toBeGreaterThan(240);
    expect(longestBelow(levels, 0.001) * 10).toBeLessThan(700);
  });

  it('takes a new tempo and a seek over within a beat', async () => {
    await openAwake();
    await play(shuffle(7, 100), soundOf('drums'));
    await wait(2900);
    await page.evaluate((program) => window.bench.band.change(program), shuffle(7, 200));
    await wait(700);
    const first = await moment();
    await wait(900);
    const second = await moment();
    const perSecond =
      ((second.heard?.ticks ?? 0) - (first.heard?.ticks ?? 0)) / (second.outputTime - first.outputTime);
    expect(perSecond / ((200 / 60) * 480)).toBeCloseTo(1, 1);
    await page.evaluate(() => window.bench.band.seek(9));
    await wait(650);
    expect((await moment()).heard).toMatchObject({ kind: 'chorus', bar: 9 });
  });

  it('shows what a late loudspeaker lets be heard, not what the browser believes', async () => {
    await openAwake();
    const sound = soundOf('click');
    await play(shuffle(7, 120), sound);
    await wait(1500);
    const first = await moment();
    await page.evaluate((chosen) => window.bench.band.setSound(chosen), { ...sound, lag: 0.4 as never });
    await wait(900);
    const second = await moment();
    const gone = ((second.heard?.ticks ?? 0) - (first.heard?.ticks ?? 0)) / 960;
    expect(second.outputTime - first.outputTime - gone).toBeCloseTo(0.4, 1);
  });

  it('is silent at once after stop, and lets go of every source', async () => {
    await openAwake();
    await play(shuffle(7, 140), soundOf('drums', 'bass', 'chords'));
    await wait(3000);
    const stopped = await page.evaluate(() => {
      const { currentTime } = window.bench.moment();
      window.bench.band.stop();
      window.bench.band.stop();
      return currentTime;
    });
    await wait(1500);
    const { samples, at, sampleRate } = await recorded();
    expect(peakBetween(samples, at(stopped) - sampleRate, at(stopped))).toBeGreaterThan(0.05);
    // One buffer of the device (some 20 ms) may be on its way already when the page stops.
    expect(peakBetween(samples, at(stopped + 0.055), samples.length)).toBeLessThan(0.001);
    expect((await page.evaluate(() => window.bench.counts())).live).toBe(0);
    expect(await page.evaluate(() => [window.bench.band.playhead(), window.bench.band.upcoming()])).toEqual([
      null,
      null,
    ]);
    expect((await page.evaluate(() => window.bench.bars)).at(-1)?.heard).toBeNull();
    expect(await page.evaluate(() => window.bench.statuses)).toEqual([
      'loading',
      'ready',
      'playing',
      'ready',
    ]);
  });

  it('comes to its end by itself', async () => {
    await openAwake();
    const program = testProgram('jump', {
      chart: testChart('eight-v-second'),
      tempo: 280,
      plan: { choruses: 1, ending: 'stop' },
    });
    await play(program, soundOf('drums'), 6);
    await wait(2600);
    expect(await page.evaluate(() => window.bench.statuses)).toEqual([
      'loading',
      'ready',
      'playing',
      'ready',
    ]);
  });

  it('plays a single note over a muted channel', async () => {
    await openAwake();
    await page.evaluate((sound) => {
      window.bench.band.setSound(sound);
      return window.bench.band.audition('lead', 67 as never, 0.4 as never, 0);
    }, soundOf());
    await wait(700);
    const { samples, sampleRate } = await recorded();
    const onset = riseBetween(samples, 0, samples.length);
    const note = samples.slice(onset + 0.1 * sampleRate, onset + 0.35 * sampleRate);
    expect(amplitudeAt(note, sampleRate, hzOf(67 as never))).toBeGreaterThan(0.01);
  });

  describe('in bad circumstances', () => {
    it('says that the browser has no Web Audio', async () => {
      await page.addInitScript(() => Reflect.deleteProperty(window, 'AudioContext'));
      await open();
      expect(await play(shuffle(7, 120), soundOf('drums'))).toMatchObject({
        kind: 'failed',
        why: 'no web audio',
      });
    });

    it('waits for a gesture, and plays after one', async () => {
      // What the driver evaluates counts as a gesture, so the page must act by itself.
      await page.addInitScript(
        ([program, sound]) => {
          window.addEventListener('load', () => void window.bench.band.play(program, sound, 0));
        },
        [shuffle(7, 120), soundOf('drums')] as const,
      );
      await page.goto(served.address);
      await new Promise((resolve) => setTimeout(resolve, 2000));
      expect(await page.evaluate(() => window.bench.statuses)).toEqual(['loading', 'blocked']);
      await page.click('#gesture');
      expect(await play(shuffle(7, 120), soundOf('drums'))).toEqual({ kind: 'playing' });
    });

    it('says when the system takes the sound away, and goes on when it comes back', async () => {
      await openAwake();
      await play(shuffle(7, 120), soundOf('drums'));
      await wait(600);
      await page.evaluate(() => window.bench.context().suspend());
      await wait(200);
      expect(await page.evaluate(() => window.bench.band.status())).toEqual({ kind: 'interrupted' });
      const before = await moment();
      await wait(500);
      expect((await moment()).heard).toEqual(before.heard);
      await page.evaluate(() => window.bench.context().resume());
      await wait(600);
      expect(await page.evaluate(() => window.bench.band.status())).toEqual({ kind: 'playing' });
      expect((await moment()).heard?.ticks ?? 0).toBeGreaterThan(before.heard?.ticks ?? 0);
    });

    it('says when the device is closed, and opens another on the next play', async () => {
      await openAwake();
      await play(shuffle(7, 120), soundOf('drums'));
      await page.evaluate(() => window.bench.context().close());
      await wait(200);
      expect(await page.evaluate(() => window.bench.band.status())).toMatchObject({
        kind: 'failed',
        why: 'device',
      });
      expect(await play(shuffle(7, 120), soundOf('drums'))).toEqual({ kind: 'playing' });
    });

    it('plays with a softer limiter where pages get no worklets', async () => {
      await page.addInitScript(() => Reflect.deleteProperty(BaseAudioContext.prototype, 'audioWorklet'));
      await openAwake();
      expect(await play(shuffle(7, 160), soundOf('drums', 'bass', 'chords'))).toEqual({ kind: 'playing' });
      const levels: number[] = [];
      for (let look = 0; look < 10; look += 1) {
        await wait(300);
        levels.push(await page.evaluate(() => window.bench.level()));
      }
      expect(Math.max(...levels)).toBeGreaterThan(0.05);
      expect(Math.max(...levels)).toBeLessThan(0.81);
      expect(watch.errors).toEqual([]);
    });

    it('says when its audio part cannot be loaded', async () => {
      await openAwake();
      await page.route('**/load-band*.js', (route) => route.abort());
      expect(await play(shuffle(7, 120), soundOf('drums'))).toMatchObject({ kind: 'failed', why: 'load' });
    });
  });

  it('leaves the console empty and asks nobody else', async () => {
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    await openAwake();
    await play(shuffle(7, 120), soundOf('drums', 'bass', 'chords', 'click'));
    await wait(800);
    const { errors, failures } = watch;
    const foreign = watch.foreign(served.address);
    expect({ said, errors, failures, foreign }).toEqual({ said: [], errors: [], failures: [], foreign: [] });
  });
});
