import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Harp } from '../../../src/core/harp/harp';
import { NATURAL_NOTES } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { chorusAdvice } from '../../../src/core/practice/chorus-advice';
import { type ChorusNote, judgeChorus } from '../../../src/core/practice/heard-chorus';
import { createGrid } from '../../../src/core/score/grid';
import { asCents, asPitchClass, asSeconds } from '../../../src/core/theory/units';

const harp: Harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
/** Blues in G: G7 C7 G7 G7 and so on, on a C harp. */
const chart = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });
const grid = createGrid(chart.meter, 2);
/** At 100 beats a minute a beat of 480 ticks lasts 0.6 s. */
const secondsPerTick = 0.6 / 480;

const play = (id: string, bar: number, ticks: number, change: Partial<ChorusNote> = {}): ChorusNote => {
  const sound = harp.sounds.find((each) => soundId(each) === id);
  if (sound === undefined) throw new Error(`The harp has no ${id}`);
  return {
    bar: bar - 1,
    ticks,
    pitch: sound.pitch,
    sound,
    offset: asCents(0),
    length: asSeconds(0.3),
    secondsPerTick,
    attacked: true,
    ...change,
  };
};
const judge = (notes: readonly ChorusNote[]) => judgeChorus(notes, { chart, grid, scale: null });
const say = (notes: readonly ChorusNote[]) =>
  chorusAdvice(judge(notes), { chart, harp, technique: NATURAL_NOTES });

describe('the notes of a chorus', () => {
  it('are chord tones, blue notes, scale tones or others over the chord of their bar', () => {
    // Over G7: B is its third, B♭ the flattened third of the key, A the second of the scale, A♭ neither (by definition).
    const { bars } = judge([
      play('3D', 1, 0),
      play("3D'", 1, 480),
      play("3D''", 1, 960),
      play("3D'''", 1, 1440),
    ]);
    expect(bars[0]?.counts).toEqual({ chord: 1, blue: 1, scale: 1, other: 1 });
    expect(bars[1]?.counts).toEqual({ chord: 0, blue: 0, scale: 0, other: 0 });
  });

  it('belong to the next chord where they run ahead of it by up to half a beat', () => {
    const kinds = (ticks: number) =>
      judge([play('5B', 4, ticks)]).hits.map(({ kind, chord }) => `${kind} ${chord.symbol}`);
    // E over G7 is of its scale; before C7 in bar 5 it is that chord's third.
    expect(kinds(1440)).toEqual(['scale G7']);
    expect(kinds(1760)).toEqual(['chord C7']);
  });

  it('are left out where they were grazed, or lie outside of the chart', () => {
    expect(judge([play('3D', 1, 0, { length: asSeconds(0.04) }), play('3D', 13, 0)]).hits).toEqual([]);
  });

  it('are early and late by more than 50 ms, and by the swung off-beat', () => {
    const at = (ticks: number) => judge([play('3D', 1, ticks)]).bars[0];
    // 60 ms are 48 ticks at this tempo, 40 ms are 32; the off-beat of 2 : 1 lies at tick 320.
    expect([at(480 - 48)?.early, at(480 + 48)?.late, at(480 - 32)?.early, at(480 + 32)?.late]).toEqual([
      1, 1, 0, 0,
    ]);
    expect([at(320)?.early, at(320)?.late, at(320 + 48)?.late]).toEqual([0, 0, 1]);
  });

  it('are judged beside the lean of the player, which is told apart', () => {
    const ahead = [1, 2, 3, 4, 5, 6].map((bar) => play('4D', bar, 480 - 40));
    const { lean, bars } = judge(ahead);
    expect(lean).toBeCloseTo(-0.05, 5);
    expect(bars.flatMap(({ early }) => early)).toEqual(Array.from({ length: 12 }, () => 0));
  });

  it('have no timing where they came by a glide', () => {
    expect(judge([play('3D', 1, 48, { attacked: false })]).hits[0]?.timing).toBeNull();
  });
});

describe('the sentence after a chorus', () => {
  const good = [1, 2, 3, 4, 5, 6].map((bar) => play(bar > 4 ? '4B' : '2D', bar, 480));

  it.each<[string, readonly ChorusNote[], RegExp]>([
    ['nothing', [], /^Nothing was heard/],
    ['a single note', good.slice(0, 1), /^One note was heard: too few/],
    [
      'a bend that is high',
      [...good, ...[1, 3].map((bar) => play("3D'", bar, 960, { offset: asCents(38) }))],
      /^3 draw bent a semitone was about 40 cents high, twice: let it sink further\.$/,
    ],
    [
      'natural notes that are low',
      good.map((note) => ({ ...note, offset: asCents(-30) })),
      /cents low, .*breathe more gently/,
    ],
    [
      'notes beside chord and scale',
      [...good, play("3D'''", 7, 0), play("2D'", 7, 960)],
      /^In bar 7, 2 notes were neither of G7 nor of its scale: aim for its 3, \d+ draw\.$/,
    ],
    [
      'a change that was missed',
      [...good, play('4D', 8, 480), play('4D', 9, 960), play('6D', 10, 480)],
      /^The change to C7 in bar 10 passed without a note of it: try its 3, \d+ blow\.$/,
    ],
    [
      'a player ahead of the band',
      good.map((note) => ({ ...note, ticks: note.ticks - 40 })),
      /^You lead the band by about 50 ms: wait/,
    ],
    ['all well', good, /^6 of 6 notes were of their chord, in 6 of 12 bars\. Next:/],
  ])('names %s, and what to do next', (_, notes, sentence) => {
    expect(say(notes)).toMatch(sentence);
  });

  it('counts bars within their section, as the chart does', () => {
    const sections = {
      ...chart,
      bars: chart.bars.map((bar, i) => ({ ...bar, place: { section: 'B', bar: i } })),
    };
    const stray = [play("3D'''", 7, 0), play("3D'''", 7, 480), play('3D', 1, 0), play('3D', 2, 0)];
    const advice = chorusAdvice(judge(stray), { chart: sections, harp, technique: NATURAL_NOTES });
    expect(advice).toContain('In bar 7 of “B”, 2 notes');
  });
});
