import { describe, expect, it } from 'vitest';
import { bandSection } from '../../../src/audio/transport/band-sections';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { onceBars } from '../../../src/core/chart/once';
import { printChart } from '../../../src/core/chart-text/print-chart';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { eachSongSection, sectionSeconds, songSeconds } from '../../../src/core/song/song-sections';
import { asBpm } from '../../../src/core/theory/units';
import { testProgram } from '../../helpers/test-charts';

const read = (text: string) =>
  readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Own' }).chart;

const TUNE = 'Order: Intro, then A three times\n[Intro] Am7 | D7\n[A] G | C | G';

const program = testProgram('shuffle', {
  chart: read(TUNE),
  plan: { countInBars: 1, intro: 'none', choruses: 3, turnarounds: 'as written' },
});

const barsOf = (index: number): string =>
  sectionAt(program, index)
    ?.chart.bars.map(({ chords }) => chords[0]?.chord.symbol)
    .join(' ') ?? 'none';

describe('an introduction at the beginning of an order', () => {
  it('is played in the first chorus alone, however often the tune goes round', () => {
    expect([1, 2, 3].map((index) => barsOf(index).split(' ').length)).toEqual([11, 9, 9]);
    expect(barsOf(1)).toMatch(/^Am7 D7 G C G/);
    expect(barsOf(2)).toMatch(/^G C G G C G G C/);
    expect(sectionAt(program, 2)?.barNumbers[0]).toBe(2);
    expect(sectionAt(program, 2)?.score.length).toBe(9 * 4 * 480);
  });

  it('is reached again by whoever goes to one of its bars, and repeated where it is marked', () => {
    expect(bandSection(program, 1, 1)?.barNumbers[0]).toBe(1);
    const repeated = {
      ...program,
      plan: { ...program.plan, repeat: { from: 0, to: 1 }, countInBars: 0 } as const,
    };
    expect([0, 1].map((index) => sectionAt(repeated, index)?.barNumbers)).toEqual([
      [0, 1],
      [0, 1],
    ]);
  });

  it('counts once in the length of the song', () => {
    const extent = { choruses: 3, countIn: true, ending: true };
    const arranged = [...eachSongSection(program, extent)].reduce(
      (sum, each) => sum + sectionSeconds(each),
      0,
    );
    expect(songSeconds(program, extent)).toBeCloseTo(arranged, 6);
    expect(sectionSeconds(sectionAt({ ...program, tempo: asBpm(120) }, 2) ?? expect.fail())).toBe(18);
  });

  it('is an introduction by its name and place alone, and stays one when it is printed', () => {
    expect(onceBars(read(TUNE))).toBe(2);
    expect(onceBars(read('[Introduction] C\n[Intro 2] D | D\n[A] G'))).toBe(3);
    expect(onceBars(read('[A] C\n[Intro] D\n[A] G'))).toBe(0);
    expect(onceBars(read('[Intro] C | D'))).toBe(0);
    expect(onceBars(read('[Introvert] C\n[A] D'))).toBe(0);
    expect(read(printChart(read(TUNE)))).toEqual(read(TUNE));
  });
});
