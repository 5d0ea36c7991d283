import { afterEach, describe, expect, it } from 'vitest';
import { hzOf } from '../../src/core/theory/temperament';
import { type BandVisit, bandVisits, endlessShuffle, soundOf } from '../helpers/band-visit';
import {
  amplitudeAt,
  blockLevels,
  longestBelow,
  peakBetween,
  riseBetween,
  sharpestBend,
} from '../helpers/samples';
import { soakIt } from '../helpers/soak';
import { testChart, testProgram } from '../helpers/test-charts';

/**
 * Where a test compares two clocks, or new sounds are computed while it listens, the machine may be called away in
 * between: then it looks again.
 */
const IN_REAL_TIME = { retry: 2 };

const visits = bandVisits();
let visit: BandVisit | null = null;

const openAwake = async (): Promise<BandVisit> => {
  visit = await visits.awake();
  return visit;
};

afterEach(async () => {
  await visit?.page.close();
  visit = null;
});

describe('the band in a page', () => {
  it(
    'plays in time with the page blocked for a second at a time, and calls every bar when it is heard',
    IN_REAL_TIME,
    async () => {
      const { page, play, hear, recorded } = await openAwake();
      const [beat, beats] = [60 / 180, 12];
      expect(await play(endlessShuffle(7, 180, 1), soundOf('click', 'drums'))).toEqual({ kind: 'playing' });
      await hear(0.6);
      await page.evaluate(() => window.bench.block(1000));
      await hear(0.3);
      await page.evaluate(() => window.bench.block(1400));
      const blocked = await page.evaluate(() => window.bench.bars.length);
      // The first of them may have been due while the page was blocked.
      await expect.poll(() => page.evaluate(() => window.bench.bars.length)).toBeGreaterThan(blocked + 1);
      await hear(0.5);
      const { late } = await page.evaluate(() => window.bench.counts());
      const bars = await page.evaluate(() => window.bench.bars);
      const { samples, at, sampleRate, from } = await recorded();
      expect(late).toBe(0);

      const first = riseBetween(samples, 0, samples.length, 0.1);
      const onsets = Array.from({ length: beats }, (_, i) => first + i * beat * sampleRate);
      const errors = onsets
        .slice(0, 4)
        .map(
          (onset) =>
            (riseBetween(samples, onset - 0.05 * sampleRate, onset + 0.05 * sampleRate) - onset) / sampleRate,
        );
      expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.003);
      const quiet = onsets
        .slice(4)
        .filter((onset) => peakBetween(samples, onset, onset + 0.1 * sampleRate) < 0.01);
      expect(quiet).toEqual([]);

      const start = (first + from) / sampleRate;
      expect(at(start)).toBe(first);
      expect(bars.slice(0, 2).map(({ heard }) => heard && [heard.kind, heard.bar])).toEqual([
        ['count-in', 0],
        ['chorus', 0],
      ]);
      const called = bars.map(({ outputTime }, bar) => outputTime - start - bar * 4 * beat);
      expect(Math.min(...called)).toBeGreaterThan(-0.05);
      // The page was blocked over the first bar lines; the last was met by the timer.
      expect(called.at(-1)).toBeLessThan(0.1);
    },
  );

  it(
    'goes on in another key from the same place, without a gap and without a click',
    IN_REAL_TIME,
    async () => {
      const { page, play, hear, recorded } = await openAwake();
      await play(endlessShuffle(7, 120), soundOf('bass'));
      await hear(2.4);
      const changed = await page.evaluate(
        async (program) => {
          const before = window.bench.moment();
          window.bench.band.change(program);
          await window.bench.sounded(1.5);
          const position = window.bench.band.playhead();
          return { before, after: window.bench.moment(), section: position?.section ?? null };
        },
        endlessShuffle(1, 120),
      );
      await hear(0.5);
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
    },
  );

  it('changes an instrument and the temperament while playing without a gap', IN_REAL_TIME, async () => {
    const { page, play, hear, moment, recorded } = await openAwake();
    // A feel whose chords rest for a third of a second at most in the first ten: what is silent longer is a gap.
    const steady = testProgram('minor-slow', { plan: { choruses: null } });
    const sound = { ...soundOf('chords'), chords: 'organ' as const };
    await play(steady, sound);
    await hear(1.5);
    const before = await moment();
    await page.evaluate((chosen) => window.bench.band.setSound(chosen), {
      ...sound,
      temperament: { ...sound.temperament, reference: 444 as never },
    });
    await hear(1.2);
    await page.evaluate((chosen) => window.bench.band.setSound(chosen), {
      ...sound,
      chords: 'piano' as const,
    });
    await hear(1.5);
    const counts = await page.evaluate(() => window.bench.counts());
    expect(counts.late).toBe(0);
    const { samples, at, sampleRate } = await recorded();
    const levels = blockLevels(samples.slice(at(before.currentTime)), Math.round(sampleRate / 100));
    expect(levels.length).toBeGreaterThan(240);
    expect(longestBelow(levels, 0.001) * 10).toBeLessThan(700);
  });

  it('takes a new tempo and a seek over within a beat', IN_REAL_TIME, async () => {
    const { page, play, hear, moment } = await openAwake();
    await play(endlessShuffle(7, 100), soundOf('drums'));
    await hear(0.5);
    await page.evaluate((program) => window.bench.band.change(program), endlessShuffle(7, 200));
    await hear(0.7);
    const first = await moment();
    await hear(0.9);
    const second = await moment();
    const perSecond =
      ((second.heard?.ticks ?? 0) - (first.heard?.ticks ?? 0)) / (second.outputTime - first.outputTime);
    expect(perSecond / ((200 / 60) * 480)).toBeCloseTo(1, 1);
    const sought = await page.evaluate(async () => {
      window.bench.band.seek(9);
      await window.bench.sounded(0.65);
      return window.bench.moment().heard;
    });
    expect(sought).toMatchObject({ kind: 'chorus', bar: 9 });
  });

  it('shows what a late loudspeaker lets be heard, not what the browser believes', IN_REAL_TIME, async () => {
    const { page, play, hear, moment } = await openAwake();
    const sound = soundOf('click');
    await play(endlessShuffle(7, 120), sound);
    await hear(0.8);
    const first = await moment();
    await page.evaluate((chosen) => window.bench.band.setSound(chosen), { ...sound, lag: 0.4 as never });
    await hear(0.9);
    const second = await moment();
    const gone = ((second.heard?.ticks ?? 0) - (first.heard?.ticks ?? 0)) / 960;
    expect(second.outputTime - first.outputTime - gone).toBeCloseTo(0.4, 1);
  });

  it('is silent at once after stop, and lets go of every source', async () => {
    const { page, play, hear, recorded } = await openAwake();
    await play(endlessShuffle(7, 140), soundOf('drums', 'bass', 'chords'));
    await hear(1.5);
    const stopped = await page.evaluate(() => {
      const { currentTime } = window.bench.moment();
      window.bench.band.stop();
      window.bench.band.stop();
      return currentTime;
    });
    // The context rests soon after, and its clock stands still from then on.
    await expect.poll(() => page.evaluate(() => window.bench.context().state)).toBe('suspended');
    const { samples, at, sampleRate } = await recorded();
    expect(peakBetween(samples, at(stopped) - sampleRate, at(stopped))).toBeGreaterThan(0.05);
    // One buffer of the device (some 20 ms) may be on its way already when the page stops.
    expect(samples.length).toBeGreaterThan(at(stopped + 0.2));
    expect(peakBetween(samples, at(stopped + 0.055), samples.length)).toBeLessThan(0.001);
    await expect.poll(async () => (await page.evaluate(() => window.bench.counts())).live).toBe(0);
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

  soakIt('comes to its end by itself', async () => {
    const { page, play } = await openAwake();
    const program = testProgram('jump', {
      chart: testChart('eight-v-second'),
      tempo: 280,
      plan: { choruses: 1, ending: 'stop' },
    });
    await play(program, soundOf('drums'), 6);
    await expect
      .poll(() => page.evaluate(() => window.bench.statuses))
      .toEqual(['loading', 'ready', 'playing', 'ready']);
  });

  it('plays a single note over a muted channel', async () => {
    const { page, hear, recorded } = await openAwake();
    await page.evaluate((sound) => {
      window.bench.band.setSound(sound);
      return window.bench.band.audition('lead', 67 as never, 0.4 as never, 0);
    }, soundOf());
    await hear(0.7);
    const { samples, sampleRate } = await recorded();
    const onset = riseBetween(samples, 0, samples.length);
    const note = samples.slice(onset + 0.1 * sampleRate, onset + 0.35 * sampleRate);
    expect(amplitudeAt(note, sampleRate, hzOf(67 as never))).toBeGreaterThan(0.01);
  });

  it('leaves the console empty and asks nobody else', async () => {
    visit = await visits.newVisit();
    const { page, go, wake, play, hear, watch } = visit;
    const said: string[] = [];
    page.on('console', (message) => said.push(message.text()));
    await go();
    await wake();
    await play(endlessShuffle(7, 120), soundOf('drums', 'bass', 'chords', 'click'));
    await hear(0.8);
    const { errors, failures } = watch;
    const foreign = watch.foreign(visits.address());
    expect({ said, errors, failures, foreign }).toEqual({ said: [], errors: [], failures: [], foreign: [] });
  });
});
