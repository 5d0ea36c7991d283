import { bench, describe } from 'vitest';
import { readChart } from '../../src/core/chart-text/read-chart';
import { LONGEST_TEXT } from '../../src/core/chart-text/scan-chart';

const OPTIONS = { tonic: 'Eb', mode: 'major', meter: '4/4', title: 'Long' } as const;
const ROOTS = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
const QUALITIES = ['7(b9,13)', 'm7b5', '△7#11', '7#5#9', 'm(maj7)', '13sus', 'dim7', '7b5b9', '69', 'm11'];

const fill = (word: (index: number) => string): string => {
  const words: string[] = [];
  for (let length = 0; length < LONGEST_TEXT; length += words.at(-1)?.length ?? 1)
    words.push(word(words.length));
  return words.join('').slice(0, LONGEST_TEXT);
};

const chord = (i: number): string =>
  `${ROOTS[i % 12]}${QUALITIES[Math.floor(i / 12) % 10]}/${ROOTS[Math.floor(i / 120) % 12]}`;

/** The longest text a chart may have, 20 kB, must be read in less than 50 ms, whatever stands in it. */
describe('reading 20 kB', () => {
  const texts: Readonly<Record<string, string>> = {
    'of plain bars': fill(() => 'C7 | F7 / G7 / | '),
    'of different chords': fill((i) => `${chord(i)}${i % 12 === 11 ? '|' : ' '}`),
    'of words that are no chords': fill((i) => `nonsense${i} ${i % 12 === 11 ? '|' : ''}`),
    'of chords with endless additions': fill(
      (i) => `C${i}b9#9b5#5b9#9b5#5b9#9b5 ${i % 12 === 11 ? '|' : ''}`,
    ),
    'of open brackets': fill(() => 'C (b9 '),
    'of repeats': fill(() => ':|'),
    'of blanks': fill(() => 'C\t \t '),
  };
  for (const [name, text] of Object.entries(texts)) {
    bench(name, () => {
      readChart(text, OPTIONS);
    });
  }
});
