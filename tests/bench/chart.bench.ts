import { bench, describe } from 'vitest';
import { transpose } from '../../src/core/chart/build-chart';
import { printChart } from '../../src/core/chart-text/print-chart';
import { readChart } from '../../src/core/chart-text/read-chart';
import { LONGEST_TEXT } from '../../src/core/chart-text/scan-chart';
import { fitChart } from '../../src/core/fit/fit';
import { buildHarp } from '../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../src/core/harp/reach';
import { RICHTER } from '../../src/core/harp/tunings';
import { asPitchClass } from '../../src/core/theory/units';

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

/** A tune of 128 bars as it is played: six sections, two of them in another key, with repeats, a pick-up and an introduction. */
describe('a tune of six sections, 128 bars', () => {
  const line = 'C7 | F7 Fo7 | C△7/E A7(b9) | Dm7 G7';
  const text = [
    'Pick-up: G7 /\nOrder: Intro A A B C A D A E B A',
    `[Intro] ${line}`,
    `[A]\n|: ${line} |1 ${line} :|2 ${line} ||`,
    `[B]\nKey: F\n${line}\n${line}`,
    `[C]\n|: ${line} :| x3`,
    `[D]\nKey: Am\n|: ${line} :|\n${line}`,
    `[E]\n${line}`,
  ].join('\n');
  const options = { tonic: 'C', mode: 'major', meter: '4/4', title: 'Six' } as const;
  const { chart } = readChart(text, options);
  const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(5), octave: 0 });
  bench(`read, ${chart.bars.length} bars`, () => {
    readChart(text, options);
  });
  bench('fitted', () => {
    fitChart({ chart, harp, technique: EVERY_TECHNIQUE });
  });
  bench('read, moved a fifth and printed', () => {
    printChart(transpose(readChart(text, options).chart, 7));
  });
});
