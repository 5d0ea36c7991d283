import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import type { Program } from '../../src/core/arranger/program';
import type { PartId } from '../../src/core/score/score';
import type { BandSound } from '../../src/core/song/band-sound';
import { serveBandPage } from './band-page';
import type { Moment } from './band-page/page';
import { type PageWatch, watchPage } from './browser';
import { floatsFrom } from './samples';
import type { ServedApp } from './serve';
import { fileBrowser } from './served-browser';
import { testChart, testProgram } from './test-charts';

/** Only these parts are heard, each at its resting place. */
export const soundOf = (...parts: readonly PartId[]): BandSound => {
  const { drums, bass, chords, second, lead, click } = RESTING_SOUND.mix.channels;
  const heard = (part: PartId, channel: typeof drums) => ({
    ...channel,
    gain: 0.75,
    muted: !parts.includes(part),
  });
  const channels = {
    drums: heard('drums', drums),
    bass: heard('bass', bass),
    chords: heard('chords', chords),
    second: heard('second', second),
    lead: heard('lead', lead),
    click: heard('click', click),
  };
  return { ...RESTING_SOUND, mix: { ...RESTING_SOUND.mix, channels } };
};

/** A shuffle without end. */
export const endlessShuffle = (key: number, tempo: number, countInBars: 0 | 1 = 0): Program =>
  testProgram('shuffle', {
    chart: testChart('standard', key),
    tempo,
    plan: { countInBars, choruses: null },
  });

export interface Recorded {
  readonly from: number;
  readonly sampleRate: number;
  readonly samples: Float32Array;
  /** Index of the sample at a time of the audio clock. */
  readonly at: (seconds: number) => number;
}

/** A page with the band alone, and what tests do in it. */
export interface BandVisit {
  readonly page: Page;
  readonly watch: PageWatch;
  /** Goes to the page. */
  readonly go: () => Promise<void>;
  /** Makes the gesture that browsers ask for before sound. */
  readonly wake: () => Promise<void>;
  readonly play: (program: Program, sound: BandSound, fromBar?: number) => Promise<unknown>;
  readonly moment: () => Promise<Moment>;
  /** Waits until the audio clock has gone on by so many seconds: a busy machine may take longer by any other. */
  readonly hear: (seconds: number) => Promise<void>;
  /** What was put out so far; throws where the recorder was not called for some of it. */
  readonly recorded: () => Promise<Recorded>;
}

/** Visits to the page with the band alone, in one browser for the tests of a file; call it once, outside of any test. */
export const bandVisits = () => {
  const browser = fileBrowser();
  let served: ServedApp;
  beforeAll(async () => {
    served = await serveBandPage();
  });
  afterAll(async () => {
    await served?.dispose();
  });
  const newVisit = async (): Promise<BandVisit> => {
    const page = await browser().newPage();
    page.setDefaultTimeout(60_000);
    return {
      page,
      watch: watchPage(page),
      go: async () => {
        await page.goto(served.address);
        await page.waitForFunction(() => 'bench' in window);
      },
      wake: () => page.click('#gesture'),
      play: (program, sound, fromBar = 0) =>
        page.evaluate(([given, chosen, bar]) => window.bench.band.play(given, chosen, bar), [
          program,
          sound,
          fromBar,
        ] as const),
      moment: () => page.evaluate(() => window.bench.moment()),
      hear: (seconds) => page.evaluate((given) => window.bench.sounded(given), seconds),
      recorded: async () => {
        const { from, sampleRate, pcm, skipped } = await page.evaluate(() => window.bench.recorded());
        if (skipped > 0) throw new Error(`The recorder was not called for ${skipped} frames`);
        const samples = floatsFrom(pcm);
        return { from, sampleRate, samples, at: (second) => Math.round(second * sampleRate) - from };
      },
    };
  };
  /** A visit that may sound. */
  const awake = async (): Promise<BandVisit> => {
    const visit = await newVisit();
    await visit.go();
    await visit.wake();
    return visit;
  };
  return { newVisit, awake, address: () => served.address };
};
