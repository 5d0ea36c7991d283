import { afterEach, describe, expect, it } from 'vitest';
import { type BandVisit, bandVisits, endlessShuffle, soundOf } from '../helpers/band-visit';
import { soakIt } from '../helpers/soak';

const visits = bandVisits();
let visit: BandVisit | null = null;

const newVisit = async (): Promise<BandVisit> => {
  visit = await visits.newVisit();
  return visit;
};
const openAwake = async (): Promise<BandVisit> => {
  visit = await visits.awake();
  return visit;
};

afterEach(async () => {
  await visit?.page.close();
  visit = null;
});

const SHUFFLE = endlessShuffle(7, 120);

describe('the band in bad circumstances', () => {
  soakIt('says that the browser has no Web Audio', async () => {
    const { page, go, play } = await newVisit();
    await page.addInitScript(() => Reflect.deleteProperty(window, 'AudioContext'));
    await go();
    expect(await play(SHUFFLE, soundOf('drums'))).toMatchObject({ kind: 'failed', why: 'no web audio' });
  });

  it('waits for a gesture, and plays after one', async () => {
    const { page, wake, play } = await newVisit();
    // What the driver evaluates counts as a gesture, so the page must act by itself and tell by itself.
    let onBlocked = (): void => {};
    const blocked = new Promise<void>((resolve) => {
      onBlocked = resolve;
    });
    await page.exposeFunction('tell', (kind: string) => {
      if (kind === 'blocked') onBlocked();
    });
    await page.addInitScript(
      ([program, sound]) => {
        window.addEventListener('load', () => {
          window.bench.band.onStatus(({ kind }) => Reflect.get(window, 'tell')(kind));
          void window.bench.band.play(program, sound, 0);
        });
      },
      [SHUFFLE, soundOf('drums')] as const,
    );
    await page.goto(visits.address());
    await blocked;
    expect(await page.evaluate(() => window.bench.statuses)).toEqual(['loading', 'blocked']);
    await wake();
    expect(await play(SHUFFLE, soundOf('drums'))).toEqual({ kind: 'playing' });
  });

  it('says when the system takes the sound away, and goes on when it comes back', async () => {
    const { page, play, hear, moment } = await openAwake();
    const status = () => page.evaluate(() => window.bench.band.status().kind);
    await play(SHUFFLE, soundOf('drums'));
    await hear(0.6);
    await page.evaluate(() => window.bench.context().suspend());
    await expect.poll(status).toBe('interrupted');
    const before = await moment();
    // Nothing can be awaited where nothing is to happen: on a slow machine less would go wrong in this time, not more.
    await page.evaluate(() => window.bench.wait(300));
    expect((await moment()).heard).toEqual(before.heard);
    await page.evaluate(() => window.bench.context().resume());
    await expect.poll(status).toBe('playing');
    await expect
      .poll(async () => (await moment()).heard?.ticks ?? 0)
      .toBeGreaterThan(before.heard?.ticks ?? 0);
  });

  it('says when the device is closed, and opens another on the next play', async () => {
    const { page, play } = await openAwake();
    await play(SHUFFLE, soundOf('drums'));
    await page.evaluate(() => window.bench.context().close());
    await expect
      .poll(() => page.evaluate(() => window.bench.band.status()))
      .toMatchObject({ kind: 'failed', why: 'device' });
    expect(await play(SHUFFLE, soundOf('drums'))).toEqual({ kind: 'playing' });
  });

  soakIt('plays with a softer limiter where pages get no worklets', async () => {
    const { page, go, wake, play, hear, watch } = await newVisit();
    await page.addInitScript(() => Reflect.deleteProperty(BaseAudioContext.prototype, 'audioWorklet'));
    await go();
    await wake();
    expect(await play(endlessShuffle(7, 160), soundOf('drums', 'bass', 'chords'))).toEqual({
      kind: 'playing',
    });
    const levels: number[] = [];
    for (let look = 0; look < 6; look += 1) {
      await hear(0.3);
      levels.push(await page.evaluate(() => window.bench.level()));
    }
    expect(Math.max(...levels)).toBeGreaterThan(0.05);
    expect(Math.max(...levels)).toBeLessThan(0.81);
    expect(watch.errors).toEqual([]);
  });

  it('says when its audio part cannot be loaded', async () => {
    const { page, play } = await openAwake();
    await page.route('**/load-band*.js', (route) => route.abort());
    expect(await play(SHUFFLE, soundOf('drums'))).toMatchObject({ kind: 'failed', why: 'load' });
  });
});
