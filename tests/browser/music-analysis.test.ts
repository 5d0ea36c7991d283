/**
 * What the band plays, judged by ears that are not ours: a beat tracker (music-tempo, after "Evaluation of the Audio
 * Beat Tracking System BeatRoot", Journal of New Music Research 36, 2007) and a pitch detector (pitchy, the McLeod
 * pitch method of "A smarter way to find pitch", ICMC 2005). Here it is judged in one swung and one straight feel;
 * `npm run soak` judges the others too, as a tracked chorus or two takes seconds.
 */
import MusicTempo from 'music-tempo';
import { PitchDetector } from 'pitchy';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../src/audio/band/resting-sound';
import type { Program } from '../../src/core/arranger/program';
import type { FeelId } from '../../src/core/feels/feels';
import type { PartId } from '../../src/core/score/score';
import { midiOf } from '../../src/core/theory/temperament';
import { asHz, asPitchClass } from '../../src/core/theory/units';
import { allSections } from '../helpers/all-sections';
import { serveBandPage } from '../helpers/band-page';
import { floatsFrom, peakBetween } from '../helpers/samples';
import type { ServedApp } from '../helpers/serve';
import { fileBrowser } from '../helpers/served-browser';
import { inSoak, soakIt } from '../helpers/soak';
import { testProgram } from '../helpers/test-charts';

/** What the detectors are made for. */
const RATE = 44_100;

const browser = fileBrowser();
let served: ServedApp;
let page: Page;

beforeAll(async () => {
  served = await serveBandPage();
  page = await browser().newPage();
  await page.goto(served.address);
  await page.waitForFunction(() => 'bench' in window);
});
afterAll(async () => {
  await served?.dispose();
});

/** The left side of a program's sound, some parts of it only. */
const listenTo = async (program: Program, parts: readonly PartId[]): Promise<Float32Array> => {
  const { style } = program;
  const sound = { ...RESTING_SOUND, bass: style.bass, chords: style.chords, kit: style.kit };
  const order = { program, sections: allSections(program), sound, sampleRate: RATE, parts };
  const { pcm, frames } = await page.evaluate((given) => window.bench.render(given), order);
  return floatsFrom(pcm).slice(0, frames);
};

const plain = (feel: FeelId, plan: object = {}): Program =>
  testProgram(feel, { plan: { choruses: 2, countInBars: 0, ending: 'stop', arc: 'steady', ...plan } });

/** Beats a minute through the tracked beats, by least squares; other metrical levels are folded onto the asked one. */
const trackedTempo = (samples: Float32Array, asked: number): number => {
  const { beats } = new MusicTempo(Array.from(samples));
  const n = beats.length;
  const meanX = (n - 1) / 2;
  const meanY = beats.reduce((sum, beat) => sum + beat, 0) / n;
  const slope =
    beats.reduce((sum, beat, i) => sum + (i - meanX) * (beat - meanY), 0) /
    beats.reduce((sum, _, i) => sum + (i - meanX) ** 2, 0);
  const levels = [1 / 3, 1 / 2, 2 / 3, 1, 3 / 2, 2, 3].map((level) => (60 / slope) * level);
  return levels.reduce((best, each) => (Math.abs(each - asked) < Math.abs(best - asked) ? each : best));
};

describe('tempo, by a beat tracker', () => {
  it.each(inSoak<FeelId>(['shuffle', 'straight', 'rock', 'boogie', 'jump'], ['shuffle']))(
    '%s is within half a percent',
    async (feel) => {
      const program = plain(feel);
      const heard = trackedTempo(await listenTo(program, ['drums', 'bass', 'chords']), program.tempo);
      expect(Math.abs(heard / program.tempo - 1)).toBeLessThan(0.005);
    },
  );
});

/** Where in the beat, as a share of it, attacks of the hi-hat lie between one on-beat and the next. */
const offBeats = (samples: Float32Array, tempo: number): readonly number[] => {
  const beat = (60 / tempo) * RATE;
  const step = Math.round(0.001 * RATE);
  const shares: number[] = [];
  for (let start = 0; start + beat < samples.length; start += beat) {
    const levels: number[] = [];
    for (let at = start + 0.4 * beat; at < start + 0.9 * beat; at += step)
      levels.push(peakBetween(samples, at, at + step));
    const rises = levels.map((level, i) => level - (levels[i - 1] ?? level));
    const steepest = rises.indexOf(Math.max(...rises));
    if (rises[steepest] > 0.01) shares.push(0.4 + (steepest * step) / beat);
  }
  return shares;
};

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/** A feel, the swing it is given, and the ratio that is to be heard. */
type Swung = readonly [FeelId, Program['style']['swing'], number];

describe('swing, measured between attacks', () => {
  const own: readonly Swung[] = [
    ['shuffle', 'feel', 2],
    ['rock', 'feel', 1],
  ];
  const chosen: readonly Swung[] = [
    ['swing', 2.5, 2.5],
    ['shuffle', 1.5, 1.5],
  ];
  it.each(inSoak<Swung>([...own, ...chosen], [['shuffle', 'feel', 2]]))(
    '%s at %s lies within five percent of %f to 1',
    async (feel, swing, ratio) => {
      const given = plain(feel, { sounding: 'drums', choruses: 1 });
      const program = { ...given, style: { ...given.style, swing } };
      const share = median(offBeats(await listenTo(program, ['drums']), program.tempo));
      expect(Math.abs(share / (1 - share) / ratio - 1)).toBeLessThan(0.05);
    },
  );
});

describe('bass, by a pitch detector', () => {
  it.each(inSoak<FeelId>(['shuffle', 'swing', 'rhumba'], ['swing']))(
    'stands on the root where a chord comes in: %s',
    async (feel) => {
      const program = plain(feel, { choruses: 1, ending: 'held' });
      const samples = await listenTo(program, ['bass']);
      const detector = PitchDetector.forFloat32Array(8192);
      const secondsPerTick = 60 / program.tempo / program.chart.meter.beatTicks;
      const changes = program.chart.bars.slice(0, -2).flatMap(({ chords }) => chords);
      const heard = changes.map(({ at, chord }) => {
        const from = Math.round((at * secondsPerTick + 0.06) * RATE);
        const [hz, clarity] = detector.findPitch(samples.slice(from, from + 8192), RATE);
        return { root: chord.root, clarity, heard: asPitchClass(Math.round(midiOf(asHz(hz)))) };
      });
      const clear = heard.filter(({ clarity }) => clarity > 0.85);
      const firsts = clear.filter(({ root }, i) => i === 0 || clear[i - 1]?.root !== root);
      expect(firsts.length).toBeGreaterThan(4);
      expect(firsts.filter(({ root, heard: pitch }) => root !== pitch)).toEqual([]);
    },
  );
});

soakIt('a drop-out is silent from the bar line on, but for the room', async () => {
  const program = plain('shuffle', { choruses: 1, dropOut: { play: 3, rest: 1 } });
  const samples = await listenTo(program, ['drums', 'bass', 'chords', 'click']);
  const bar = ((program.chart.meter.beats * 60) / program.tempo) * RATE;
  const loudest = peakBetween(samples, 0, samples.length);
  for (const silent of [3, 7]) {
    expect(peakBetween(samples, (silent + 0.4) * bar, (silent + 0.98) * bar) / loudest).toBeLessThan(0.002);
    expect(peakBetween(samples, (silent - 0.9) * bar, silent * bar) / loudest).toBeGreaterThan(0.1);
  }
});
