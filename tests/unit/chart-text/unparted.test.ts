import { describe, expect, it } from 'vitest';
import { type ChartReading, readChart } from '../../../src/core/chart-text/read-chart';
import { LONGEST_TEXT } from '../../../src/core/chart-text/scan-chart';
import { transposeText } from '../../../src/core/chart-text/transpose-text';
import { oneChordABar } from '../../../src/core/chart-text/unparted';
import { problemSentence } from '../../helpers/problem-sentence';

const read = (text: string): ChartReading =>
  readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' });

const sentences = (text: string): readonly string[] => read(text).problems.map(problemSentence);

describe('a line of chords that nothing parts', () => {
  it('is one bar, and said to be', () => {
    expect(read('C7 F7 C7 C7').chart.bars).toHaveLength(1);
    expect(sentences('C7 F7 C7 C7')).toEqual([
      'Line 1, column 1: The 4 chords of this line share one bar, as no | parts them. ' +
        'If each is meant to last a bar, write one chord a bar, such as C7 | F7 | C7 | C7.',
    ]);
    expect(sentences('C7 F7 C7 C7\nF7 F7 C7 C7')).toHaveLength(2);
    expect(sentences('C7 | F7\nF7 F7 C7 C7')).toHaveLength(1);
  });

  it.each([
    ['C7 F7 C7 C7', 'C7 | F7 | C7 | C7'],
    [
      '  C7, F7, (C7)  C7(b9, 13)\nG7 F7\r\nC7 | C7 F7 G7',
      '  C7 | F7 | (C7) | C7(b9, 13)\nG7 F7\r\nC7 | C7 F7 G7',
    ],
    ['I IV I V\n\nI IV I I', 'I | IV | I | V\n\nI | IV | I | I'],
    ['C7 F7 C7 F7 G7 C7 F7 G7', 'C7 | F7 | C7 | F7 | G7 | C7 | F7 | G7'],
  ])('becomes one chord a bar: %j', (text, expected) => {
    expect(oneChordABar(text, 'C')).toBe(expected);
    expect(sentences(expected).filter((each) => each.includes('no | parts'))).toEqual([]);
  });

  it.each([
    'C7 F7',
    'C7 / F7 /',
    '| C7 F7 C7 C7 |',
    'C7 F7 G7 C7 |',
    'the first verse',
    'C7 F7 what G7',
    '% % % %',
    '',
  ])('is no such line: %j', (text) => {
    expect(oneChordABar(text, 'C')).toBe(text);
    expect(sentences(text).filter((each) => each.includes('no | parts'))).toEqual([]);
  });
});

describe('a text too long for a chart', () => {
  const long = `${'C7 | F7 G7\n'.repeat(LONGEST_TEXT / 11)}${' '.repeat(LONGEST_TEXT % 11)} `;

  it('is refused in words, kept, and left alone by transposing', () => {
    const reading = read(long);
    expect(reading.source).toBe(long);
    expect(reading.chart.bars).toHaveLength(1);
    expect(reading.problems.map(problemSentence)).toEqual([
      'Line 1, column 1: This text has 20,001 characters, more than the 20,000 of a chart; nothing of it is played. ' +
        'It is kept as it is. Make it shorter, or keep parts of it as charts of their own.',
    ]);
    expect(transposeText(reading, 2)).toEqual({ text: long, tonic: 'C' });
    expect(oneChordABar(long, 'C')).toBe(long);
  });

  it('is read up to the limit', () => {
    const reading = read(long.slice(0, LONGEST_TEXT));
    expect(reading.chart.bars).toHaveLength(256);
    expect(reading.problems.map(({ what }) => what).join()).not.toContain('characters');
  });
});
