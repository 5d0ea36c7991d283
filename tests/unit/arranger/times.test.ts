import { describe, expect, it } from 'vitest';
import { FEEL_IDS, type FeelId } from '../../../src/core/feels/feels';
import { playClick } from '../../../src/core/players/click';
import type { Style } from '../../../src/core/players/style';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';
import { readSteps, stretchSteps } from '../../../src/core/score/steps';
import { inBar, partOf, sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

const BACKBEATS: readonly number[] = [DRUM_KEYS.snare, DRUM_KEYS.stick];

const chorus = (feel: FeelId, time: Style['time'], seed = 1) =>
  sectionOf(testProgram(feel, { style: { time, seed } }), 1);

/** Where the loud strokes of snare or stick lie in each bar of time. */
const backbeats = (feel: FeelId, time: Style['time']): ReadonlySet<number> => {
  const section = chorus(feel, time);
  const loud = [0, 1, 2].flatMap((bar) =>
    inBar(section, bar, 'drums').filter(({ pitch, velocity }) => BACKBEATS.includes(pitch) && velocity > 72),
  );
  return new Set(loud.map(({ at }) => at));
};

describe('half time', () => {
  it.each([
    ['. X . X', false, '2X'],
    ['. X . X', true, '2X'],
    ['x. .x x. ..', false, '0x 3x'],
    ['x.. ..o x.. ...', false, '0x 3o'],
    ['x..x .... ..x. ....', false, '0x 1.5x'],
  ])('%s, second bar %s, is %s', (text, second, expected) => {
    const struck = stretchSteps(readSteps(text)[0] ?? [], 4, second).filter(({ mark }) => mark !== '.');
    expect(struck.map(({ beat, step, of, mark }) => `${beat + step / of}${mark}`).join(' ')).toBe(expected);
  });

  it.each(['shuffle', 'straight', 'rock', 'double-shuffle'] as const)(
    'has the backbeat of %s on 3, while the hand goes on as before',
    (feel) => {
      expect([...backbeats(feel, 'usual')].sort((a, b) => a - b)).toEqual([480, 1440]);
      expect([...backbeats(feel, 'half-time')]).toEqual([960]);
      const strokes = (time: Style['time']) =>
        inBar(chorus(feel, time), 1, 'drums').filter(
          ({ pitch }) => pitch === DRUM_KEYS.hat || pitch === DRUM_KEYS.ride,
        );
      expect(strokes('half-time').map(({ at }) => at)).toEqual(strokes('usual').map(({ at }) => at));
    },
  );
});

describe('double time', () => {
  it.each(['shuffle', 'rock'] as const)('has the backbeats of %s between the beats', (feel) => {
    expect([...backbeats(feel, 'double-time')].sort((a, b) => a - b)).toEqual([240, 720, 1200, 1680]);
  });

  it('walks eight notes a bar over the same chords', () => {
    const section = chorus('swing', 'double-time');
    expect(section.chart).toEqual(chorus('swing', 'usual').chart);
    const full = section.chart.bars.filter((_, bar) => inBar(section, bar, 'bass').length >= 7);
    expect(full.length).toBeGreaterThan(8);
  });

  it('swings as the tempo it is felt at', () => {
    const at = (time: Style['time']) =>
      new Set(
        partOf(sectionOf(testProgram('swing', { tempo: 120, style: { time } }), 0), 'drums')
          .filter(({ pitch }) => pitch === DRUM_KEYS.ride)
          .map((note) => note.at % (time === 'usual' ? 480 : 240)),
      );
    expect([...at('usual')]).toContain(340);
    expect([...at('double-time')]).toContain(148);
  });
});

describe.each(['half-time', 'double-time'] as const)('%s', (time) => {
  it.each(FEEL_IDS)(
    '%s keeps its length, its chords and its stops, and plays something in every bar',
    (feel) => {
      for (const stopTime of ['off', 'first four bars'] as const) {
        const program = testProgram(feel, { style: { time, stopTime, seed: 5 }, plan: { choruses: 2 } });
        for (const index of [0, 1, 2]) {
          const section = sectionOf(program, index);
          expect(section.score.length).toBe(section.chart.length);
          for (const bar of section.chart.bars.keys())
            expect(inBar(section, bar, 'drums').length).toBeGreaterThan(0);
        }
        const stopped = inBar(sectionOf(program, 0), 1, 'bass');
        if (stopTime !== 'off') expect(stopped.length).toBeLessThanOrEqual(2);
      }
    },
  );
});

describe('the click', () => {
  const beats = (
    place: Parameters<typeof playClick>[1],
    firstBar = 0,
    meter: '4/4' | '3/4' | '6/8' = '4/4',
  ) =>
    playClick(testChart('standard', 7, meter), place, firstBar)
      .filter(({ at }) => at < 2 * 1920)
      .map(({ at }) => at);

  it('falls where it is asked for', () => {
    expect(beats('every beat')).toEqual([0, 480, 960, 1440, 1920, 2400, 2880, 3360]);
    expect(beats('two and four')).toEqual([480, 1440, 2400, 3360]);
    expect(beats('four')).toEqual([1440, 3360]);
    expect(beats('every other bar')).toEqual([0]);
    expect(beats('every other bar', 9)).toEqual([1920]);
    expect(beats('two and four', 0, '3/4')).toEqual([480, 960, 1920, 2400, 3360]);
    expect(beats('two and four', 0, '6/8')).toEqual([720, 2160, 3600]);
  });

  it('counts every other bar on through choruses of an odd number of bars', () => {
    const program = testProgram('shuffle', {
      plan: { click: 'every other bar', repeat: { from: 0, to: 2 } },
    });
    const heard = [0, 1, 2].flatMap((index) =>
      partOf(sectionOf(program, index), 'click').map(({ at }) => index * 3 + at / 1920),
    );
    expect(heard).toEqual([0, 2, 4, 6, 8]);
  });
});

describe('the way into the last chorus', () => {
  it.each(FEEL_IDS)('%s: a long fill ends the one before, a cymbal begins it', (feel) => {
    const program = testProgram(feel, { plan: { choruses: 4, arc: 'breathe' } });
    const toms: readonly number[] = [
      DRUM_KEYS.snare,
      DRUM_KEYS.high,
      DRUM_KEYS.mid,
      DRUM_KEYS.low,
      DRUM_KEYS.kick,
    ];
    const before = sectionOf(program, 2);
    const { beatTicks, beats } = before.chart.meter;
    const filled = inBar(before, 11, 'drums').filter(
      ({ at, pitch }) => at >= (beats / 2) * beatTicks && toms.includes(pitch),
    );
    expect(filled.length).toBeGreaterThanOrEqual(2);
    const first = partOf(sectionOf(program, 3), 'drums').filter(({ at }) => at === 0);
    expect(first.map(({ pitch }) => pitch)).toContain(DRUM_KEYS.crash);
  });
});
