import { describe, expect, it } from 'vitest';
import type { MeterName } from '../../../src/core/chart/chart';
import { FEEL_IDS, type FeelId, feelOf } from '../../../src/core/feels/feels';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

/** Feels that take the meter of a chart; the others have one of their own. */
const FREE = FEEL_IDS.filter((feel) => feelOf(feel).meter === null);

const chorusIn = (feel: FeelId, meter: MeterName, seed: number) =>
  sectionOf(
    testProgram(feel, {
      chart: testChart('standard-turnaround', 7, meter),
      style: { seed },
      plan: { arc: 'breathe' },
    }),
    1,
  );

/** Beats on which something of some keys strikes in bars of time, by bar. */
const beatsOf = (section: ReturnType<typeof chorusIn>, keys: readonly number[]): readonly string[] =>
  section.chart.bars.slice(0, 3).map((_, bar) =>
    inBar(section, bar, 'drums')
      .filter(({ pitch, velocity }) => keys.includes(pitch) && velocity > 64)
      .filter(({ at }) => at % section.chart.meter.beatTicks === 0)
      .map(({ at }) => at / section.chart.meter.beatTicks + 1)
      .join(' '),
  );

// What a waltz and a bar of six have, common practice, no source.
describe('three beats', () => {
  it.each(['shuffle', 'straight', 'rock', 'minor-slow', 'boogie'] as const)(
    '%s has its backbeat on 2 and 3, never on 1',
    (feel) => {
      for (let seed = 1; seed <= 6; seed += 1) {
        const backbeats = beatsOf(chorusIn(feel, '3/4', seed), [DRUM_KEYS.snare, DRUM_KEYS.stick]);
        // One of them may be filled.
        expect(backbeats.filter((beats) => beats === '2 3').length).toBeGreaterThan(1);
        expect(backbeats.some((beats) => beats.startsWith('1'))).toBe(false);
      }
    },
  );
});

describe('a parade figure in three', () => {
  it('has the way out of its fourth beat on 3, where the bass is, not the accent of its second beat twice', () => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const section = chorusIn('second-line', '3/4', seed);
      const beat = section.chart.meter.beatTicks;
      const snare = section.chart.bars.flatMap((_, bar) =>
        inBar(section, bar, 'drums').filter(({ pitch }) => pitch === DRUM_KEYS.snare),
      );
      const loudness = (from: number) => {
        const struck = snare.filter(({ at }) => Math.abs(at - from) < 24).map(({ velocity }) => velocity);
        return struck.reduce((sum, each) => sum + each, 0) / Math.max(1, struck.length);
      };
      expect(loudness(2 * beat)).toBeGreaterThan(loudness(2.5 * beat));
      expect(loudness(0)).toBeGreaterThan(60);
    }
  });
});

describe('bars of six', () => {
  it.each(['straight', 'rock', 'minor-slow'] as const)('%s: the hand plays every eighth', (feel) => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const section = chorusIn(feel, '6/8', seed);
      const hand = inBar(section, 1, 'drums')
        .filter(({ pitch }) => pitch === DRUM_KEYS.hat || pitch === DRUM_KEYS.ride)
        .map(({ at }) => Math.round(at / 240));
      expect(hand).toEqual(expect.arrayContaining([0, 1, 2, 3, 4, 5]));
    }
  });

  it.each(['train', 'rock', 'straight'] as const)('%s: the bass seldom has nothing but the root', (feel) => {
    let [bare, all] = [0, 0];
    for (let seed = 1; seed <= 6; seed += 1) {
      const section = chorusIn(feel, '6/8', seed);
      for (const [bar, { chords }] of section.chart.bars.slice(0, -2).entries()) {
        const root = chords[0]?.chord.root;
        const bass = inBar(section, bar, 'bass');
        all += 1;
        if (bass.every(({ pitch }) => pitch % 12 === root)) bare += 1;
      }
    }
    expect(bare / all).toBeLessThan(0.2);
  });

  it.each(FREE)('%s: no bar of the bass is a first beat alone, but for where it is held', (feel) => {
    for (let seed = 1; seed <= 6; seed += 1) {
      const section = chorusIn(feel, '6/8', seed);
      const bass = partOf(section, 'bass');
      expect(bass.length).toBeGreaterThan(section.chart.bars.length * 1.5);
      // A note is never followed by a silence of a beat and more.
      for (const [i, { at, length }] of bass.entries()) {
        const next = bass[i + 1]?.at;
        if (next !== undefined) expect(next - at - length).toBeLessThan(section.chart.meter.beatTicks);
      }
    }
  });
});
