import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { barSign } from '../../../src/core/song/bar-place';
import {
  sectionAhead,
  sectionsElsewhere,
  sectionWays,
  sectionWords,
} from '../../../src/core/song/section-ahead';
import { ENGLISH } from '../../../src/core/theory/note-names';
import { asPitchClass } from '../../../src/core/theory/units';

/** A C harp in second position: the song is in G. */
const IN_HAND = { harp: { key: asPitchClass(0) }, position: 2 };

const read = (text: string) =>
  readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Own' }).chart;

const TUNE = read('[Intro] D7\n[A] G | C | G | D | G | G\n[Trio]\nKey: C\nC | F | G | C\n[B]\nKey: Em\nEm');

const said = (bar: number, goesOn = true): string => {
  const ahead = sectionAhead(TUNE, bar, IN_HAND, goesOn);
  return ahead === null ? '' : `${sectionWords(ahead, ENGLISH)}: ${sectionWays(ahead, IN_HAND, ENGLISH)}`;
};

it('a bar is named as the chart numbers it, in a tune of sections with its section', () => {
  expect([0, 7].map((bar) => barSign(TUNE.bars[bar], bar))).toEqual(['Intro 1', 'Trio 1']);
  expect(barSign(read('G | C').bars[1], 1)).toBe('2');
});

describe('a section in another key', () => {
  it('is told a line ahead, with the position of the harp in hand and the harp of the song’s position', () => {
    const trio = 'Trio in C: 1st position (straight) on the C harp, or take the F harp';
    expect([0, 1, 2, 3, 6].map((bar) => said(bar))).toEqual(['', '', '', trio, trio]);
    const minor = 'B in E minor: 5th position on the C harp, or take the A harp';
    expect([7, 10].map((bar) => said(bar))).toEqual([minor, minor]);
  });

  it('is told round the form too, past an introduction that does not come again, unless the song ends', () => {
    expect(said(11)).toBe('A in G: 2nd position (cross) on the C harp');
    expect(said(11, false)).toBe('');
  });

  it('stands once among those that need another harp or position', () => {
    expect(sectionsElsewhere(TUNE, IN_HAND).map((each) => sectionWords(each, ENGLISH))).toEqual([
      'Trio in C',
      'B in E minor',
    ]);
    const plain = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });
    expect(sectionsElsewhere(plain, IN_HAND)).toEqual([]);
    expect(sectionAhead(plain, 11, IN_HAND, true)).toBeNull();
  });

  it('goes with the strains of a rag-blues, whose trio lies a fourth up', () => {
    const strains = buildChart({ form: 'strains', key: asPitchClass(7), meter: '4/4' });
    const [trio, ...more] = sectionsElsewhere(strains, IN_HAND);
    expect([trio && sectionWords(trio, ENGLISH), more]).toEqual(['Trio in C', []]);
  });
});
