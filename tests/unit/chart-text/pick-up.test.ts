import { describe, expect, it } from 'vitest';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { transpose } from '../../../src/core/chart/build-chart';
import { printChart } from '../../../src/core/chart-text/print-chart';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { transposeText } from '../../../src/core/chart-text/transpose-text';
import { readAbc } from '../../../src/core/sheets/read-abc';
import { writeAbc } from '../../../src/core/sheets/write-abc';
import { eachSongSection } from '../../../src/core/song/song-sections';
import { testProgram } from '../../helpers/test-charts';

const read = (text: string) => readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Own' });

const TUNE = 'Pick-up: Am7 / D7\nG7 | C7 | G7 | D7';

const chart = read(TUNE).chart;

const spans = (
  bar: { readonly chords: readonly { chord: { symbol: string }; at: number; length: number }[] } | undefined,
) => bar?.chords.map(({ chord, at, length }) => `${chord.symbol}@${at}+${length}`).join(' ');

describe('a pick-up in a typed chart', () => {
  it('has a beat for each word, and stands before the first bar', () => {
    expect(spans(chart.pickUp)).toBe('Am7@0+960 D7@960+480');
    expect(chart.bars).toHaveLength(4);
    expect(read(TUNE).problems).toEqual([]);
    for (const name of ['Pickup', 'pick-up', 'Upbeat'])
      expect(read(`${name}: D7\nG7`).chart.pickUp?.length).toBe(480);
    expect(read('G7 | C7').chart).not.toHaveProperty('pickUp');
  });

  it.each([
    ['Pick-up:\nG7', 'is no pick-up'],
    ['Pick-up: A7 / / D7\nG7', 'is no pick-up: one has 1 to 3 beats'],
    ['Pick-up: D7\nPick-up: C7\nG7', 'says what a line before it has said'],
    ['Pick-up: H7\nG7', '"H7" is not a chord'],
  ])('%j is told what is wrong', (text, said) => {
    expect(
      read(text)
        .problems.map(({ what }) => what)
        .join(' '),
    ).toContain(said);
    expect(read(text).chart.bars).toHaveLength(1);
  });

  it('is printed and read back the same, and moves with the chart, as text and as chords', () => {
    expect(read(printChart(chart)).chart).toEqual(chart);
    expect(printChart(chart)).toMatch(/^Pick-up: Am7 \/ D7\n/);
    expect(transposeText(read(TUNE), 2).text).toBe('Pick-up: Bm7 / E7\nA7 | D7 | A7 | E7');
    expect(spans(transpose(chart, 2).pickUp)).toBe('Bm7@0+960 E7@960+480');
  });
});

describe('a band that counts in', () => {
  const program = testProgram('shuffle', {
    chart,
    plan: { countInBars: 2, intro: 'none', choruses: 2, turnarounds: 'as written' },
  });

  it('strikes the chords of the pick-up on the last beats it counts, and counts all the same', () => {
    const section = sectionAt(program, 0) ?? expect.fail();
    expect(section.chart.bars.map(spans)).toEqual(['G7@0+1920', 'Am7@1920+1440 D7@3360+480']);
    const bass = section.score.events.filter(({ part }) => part === 'bass').map(({ at }) => at);
    const chords = section.score.events.filter(({ part }) => part === 'chords');
    // Beats 2 and 4 of the second bar: 1920 + 480 and 1920 + 1440 ticks.
    expect(bass).toEqual([2400, 3360]);
    expect([...new Set(chords.map(({ at }) => at))]).toEqual([2400, 3360]);
    const plain = sectionAt({ ...program, chart: read('G7 | C7 | G7 | D7').chart }, 0);
    const counted = section.score.events.filter(({ part }) => part === 'drums' || part === 'click');
    expect(counted).toEqual(plain?.score.events);
  });

  it('leads in once, and neither before an introduction of its own nor into a repeated range', () => {
    const without = { ...program, chart: read('G7 | C7 | G7 | D7').chart };
    const extent = { choruses: 2, countIn: true, ending: true };
    const scores = (of: typeof program) => [...eachSongSection(of, extent)].map(({ score }) => score);
    expect(scores(program).slice(1)).toEqual(scores(without).slice(1));
    for (const plan of [
      { ...program.plan, intro: 'turnaround' as const },
      { ...program.plan, repeat: { from: 1, to: 2 } },
    ])
      expect(sectionAt({ ...program, plan }, 0)?.score).toEqual(sectionAt({ ...without, plan }, 0)?.score);
  });

  it('rests where the pick-up says no chord', () => {
    const resting = { ...program, chart: read('Pick-up: N.C. D7\nG7').chart };
    const played = sectionAt(resting, 0)?.score.events.filter(({ part }) => part === 'bass');
    expect(played?.map(({ at }) => at)).toEqual([3360]);
  });
});

// Tunes begin with an incomplete bar everywhere in ABC collections (common practice, no source).
describe('an upbeat in an ABC file', () => {
  it('becomes the pick-up, and comes back', () => {
    const abc = 'X:1\nT:Hall\nM:4/4\nL:1/4\nK:G\n"Am7"e2 "D7"d|"G"g4|"C"e4|';
    const sheet = readAbc(abc);
    if (typeof sheet === 'string') throw new Error(sheet);
    expect(sheet.left).toEqual([]);
    const { chart: from } = read(sheet.text);
    expect(spans(from.pickUp)).toBe('Am7@0+960 D7@960+480');
    const back = readAbc(writeAbc({ chart: from, tempo: 100, feel: 'Shuffle' }));
    if (typeof back === 'string') throw new Error(back);
    expect(read(back.text).chart).toEqual(from);
  });
});
