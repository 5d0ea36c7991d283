import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import type { Chart } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { abcTempo, usualLength } from '../../../src/core/sheets/abc-fields';
import { readAbc } from '../../../src/core/sheets/read-abc';
import type { ImportedChart } from '../../../src/core/sheets/sheet-bars';
import { writeAbc } from '../../../src/core/sheets/write-abc';
import { asPitchClass } from '../../../src/core/theory/units';
import { abcChords } from '../../helpers/abc-reading';
import { chartRow } from '../../helpers/chart-row';

const opened = (source: string): ImportedChart => {
  const read = readAbc(source);
  if (typeof read === 'string') throw new Error(read);
  return read;
};

const chartOf = (source: string): Chart => {
  const { chart, problems } = readChart(opened(source).text, {
    ...{ tonic: 'C', mode: 'major', meter: '4/4', title: '' },
  } as const);
  expect(problems.filter(({ kind }) => kind === 'unread')).toEqual([]);
  return chart;
};

/** Signs of the road, which are no chords whatever letters they begin with. */
const ROAD = /\b(?:D\.[CS]\.(?: al (?:Fine|Coda))?|To Coda|Segno|Coda|Fine)/g;

// The ABC music standard 2.1 (December 2011); each tune is put together from examples of the sections named.
const STANDARD: readonly (readonly [string, string, string])[] = [
  [
    '§4.18, 4.19: symbols, an annotation, a symbol over a rest',
    'X:1\nT:x\nM:4/4\nL:1/4\nK:G\n"G"G2 "D7/F#"A2|"Em7b5"B2 "^slow"c2|"C"z4|',
    'G:2 D7/F#:2 | Em7b5:4 | C:4',
  ],
  [
    '§4.8, 4.9: a repeat without a beginning, two endings',
    'X:1\nT:x\nM:4/4\nL:1/4\nK:C\n"C"C4|"F"F4|1 "G7"G4:|2 "C"C4|]',
    'C:4 | F:4 | G7:4 | C:4 | F:4 | C:4',
  ],
  [
    '§4.8: an upbeat behind a sign of repeat, and one that makes up for what the strain before it lacks',
    'X:1\nM:4/4\nL:1/4\nK:C\n|:G|"C"cdef|"G"gfe:|:a|"F"agfe|"C"c3:|',
    'C:4 | G:4 | C:4 | G:4 | F:4 | C:4 | F:4 | C:4',
  ],
  [
    '§4.8: a dotted bar line within a bar, and one that is not to be seen',
    'X:1\nM:4/4\nL:1/4\nK:C\n"C"c2.|"F"d2[|]"G"G4|]',
    'C:2 F:2 | G:4',
  ],
  [
    '§3.1.6: free meter, where a short first bar is a bar (the sections of this and the two above from memory)',
    'X:1\nM:none\nL:1/4\nK:C\n"C"CDE|"F"F2"G"G2|]',
    'C:4 | F:2 G:2',
  ],
  ['§4.8: three times', 'X:1\nT:x\nM:4/4\nL:1/4\nK:D\n|::"A7"A4::|"D7"d4|]', 'A7:4 | A7:4 | A7:4 | D7:4'],
  [
    '§3.1.9: parts A A B A',
    'X:1\nT:x\nP:A2B.A\nM:3/4\nL:1/4\nK:Dm\nP:A\n"Dm"D3|"A7"E3|\nP:B\n"Gm"G3|"Dm"F3|]',
    'Dm:3 | A7:3 | Dm:3 | A7:3 | Gm:3 | Dm:3 | Dm:3 | A7:3',
  ],
  [
    '§4.15, 4.5, 4.17: a line of symbols, two bars’ rest, notes in brackets',
    'X:1\nT:x\nM:C|\nL:1/4\nK:none\nCDEF|G2A2|Z2|[CEG]4|]\ns:"C"***|"F/A"*|',
    'C:4 | F/A:4 | F/A:4 | F/A:4 | F/A:4',
  ],
  [
    '§4.3, 4.4, 4.13: lengths, broken rhythm and triplets keep the places',
    'X:1\nM:4/4\nL:1/8\nK:F\n"F"F>G A/A/A (3ABc "C7"d2-|"Bb"d3/2e/ {g}f2 "Gm"[GBd]4|',
    'F:3 C7:1 | Bb:2 Gm:2',
  ],
  [
    '§2.2.1, 3.3: comments and directives on lines of their own are no end of the tune',
    '%abc-2.1\n%%pagewidth 20cm\nX:1\n%%score (1 2)\nT:x % a comment\nM:4/4\nL:1/4\nK:G\n% another\n"G"G4|"C"c4|]',
    'G:4 | C:4',
  ],
  [
    '§7.1: voices the head declares, played in the lines of music',
    'X:1\nM:4/4\nL:1/4\nV:T1\nV:B1 clef=bass\nK:Am\n[V:T1] "Am"A4|"E7"^G4|]\n[V:B1] A,4|E,4|]',
    'Am:4 | E7:4',
  ],
  [
    '§7.4: a voice laid over another takes no time of its own',
    'X:1\nM:4/4\nL:1/4\nK:C\n"C"c2 "F"A2 & E4|"G7"G4 & D2B,2|]',
    'C:2 F:2 | G7:4',
  ],
  [
    '§4.13: five in the time of three where the meter is compound, of two elsewhere',
    'X:1\nM:12/8\nL:1/8\nK:C\n"C"(5CDEFG C3 "F"F6|"G"G12|]',
    'C:2 F:2 | G:4',
  ],
  [
    '§4.14: to the end of the tune and back, as far as fine',
    'X:1\nM:4/4\nL:1/4\nK:C\n"C"C4|"F"F4!fine!|"G7"G4|"C"C4!D.C.!|]',
    'C:4 | F:4 | G7:4 | C:4 | C:4 | F:4',
  ],
  [
    '§4.14: from the sign to the coda',
    'X:1\nM:4/4\nL:1/4\nK:C\n"C"C4|!segno!"F"F4!dacoda!|"G7"G4!D.S.!|!coda!"Am"A4|]',
    'C:4 | F:4 | G7:4 | F:4 | Am:4',
  ],
  [
    '§3.2: another length within a line',
    'X:1\nM:4/4\nL:1/4\nK:C\n"C"C4|[L:1/8]"F"F4 "G"G4|\n"C"c4 "F"f4|]',
    'C:4 | F:2 G:2 | C:2 F:2',
  ],
  [
    '§4.8: endings for lists of times',
    'X:1\nM:4/4\nL:1/4\nK:C\n|:"C"C4|[1,3 "F"F4:|[2 "G"G4:|[4 "C"c4|]',
    'C:4 | F:4 | C:4 | G:4 | C:4 | F:4 | C:4 | C:4',
  ],
];

describe('the ABC standard 2.1', () => {
  it.each(STANDARD)('%s', (_, source, expected) => {
    expect(chartRow(chartOf(source))).toBe(expected);
  });

  it('reads key, meter, tempo and title (§3.1.6–3.1.8, 3.1.14)', () => {
    const { text, left } = opened(
      'X:1\nT:Brisk Steps\nM:6/8\nQ:"Brisk" 3/8=96\nK:Amix\n"A"A3 "G"B3|[M:9/8]"A"A3 "D"d3 "E"e3|[K:Em]"Em"E6|',
    );
    expect(text.split('\n').slice(0, 4)).toEqual(['Title: Brisk Steps', 'Key: A', 'Meter: 6/8', 'Tempo: 96']);
    expect(text).toContain('\nKey: Em\n');
    expect(left.join()).toContain('meter changes');
    expect(abcTempo('1/4 3/8 1/4 3/8=40')).toBe(200);
    expect(abcTempo('3/8=96')).toBe(144);
    expect(abcTempo('"Andante"')).toBeNull();
    expect(usualLength({ beats: 2, unit: 4 })).toBe(1 / 16);
    expect(usualLength({ beats: 3, unit: 4 })).toBe(1 / 8);
  });

  // abcjs 6.7.2 (MIT), which reads all of these but the three times and the line of symbols.
  it.each(STANDARD.filter(([name]) => !/three times|line of symbols/.test(name)))(
    'finds the symbols a kept parser finds: %s',
    (_, source) => {
      const written = (text: string): readonly string[] =>
        [...text.replace(ROAD, '').matchAll(/[A-G][#b]?[^\s|]*/g)]
          .map(([symbol]) => symbol)
          .filter((word) => !word.endsWith(':'));
      const music = opened(source)
        .text.split('\n')
        .filter((line) => line.startsWith('|'));
      expect(written(music.join(' '))).toEqual(abcChords(source));
    },
  );
});

describe('a chart written as ABC', () => {
  it.each(FORM_IDS)('%s reads back bar for bar, here and in a kept parser', (form) => {
    for (const meter of ['4/4', '12/8'] as const) {
      const chart = buildChart({ form, key: asPitchClass(10), meter });
      const source = writeAbc({ chart, tempo: 92, feel: 'Shuffle' });
      expect(chartRow(chartOf(source))).toBe(chartRow(chart));
      expect(abcChords(source)).toEqual(
        chart.bars.flatMap(({ chords }) => chords.map(({ chord }) => chord.symbol)),
      );
    }
  });

  it.each([
    // §3.1.14: a clef may follow the key; §4.6 writes it so.
    ['D clef=treble', 'D'],
    ['Am clef=bass', 'Am'],
    ['G treble', 'G'],
    ['D Dor', 'Dm'],
    ['Bb mixolydian', 'Bb'],
  ])('K:%s is %s', (field, key) => {
    expect(opened(`X:1\nM:4/4\nL:1/4\nK:${field}\n"C"C4|]`).text.split('\n')[0]).toBe(`Key: ${key}`);
  });

  // §3.1.14: a key holds until the next, whichever part it goes through.
  it('keeps a key written before its part, and through the part behind it', () => {
    const chart = chartOf(
      'X:1\nM:4/4\nL:1/4\nK:C\nP:A\n"C"z4|\nK:F\nP:Trio\n"F"z4|\nP:B\n"Bb"z4|\nK:C\n"G7"z4|]\n',
    );
    expect(chart.bars.map(({ key }) => key?.tonic ?? 'C')).toEqual(['C', 'F', 'F', 'C']);
  });

  it('keeps the places of chords on every eighth and sixteenth of 12/8, and on triplets of 4/4', () => {
    for (const [meter, text] of [
      ['12/8', 'C / / / F / G / / / / /\nC G A / / / / / / / / / / / / / / / / / / / / D'],
      ['6/8', 'C / F / G /\nC / / / / G / / / / / A'],
      ['4/4', 'C / F / / / G / / / / A\nC / / / / / / / / / / / / / / G'],
    ] as const) {
      const { chart } = readChart(text, { tonic: 'C', mode: 'major', meter, title: 'Hall' });
      const abc = writeAbc({ chart, tempo: 92, feel: 'Slow' });
      expect(chartOf(abc).bars, meter).toEqual(chart.bars);
      expect(opened(abc).left).toEqual([]);
    }
  });

  it('says where a chord had to move', () => {
    const read = opened('X:1\nM:4/4\nL:1/4\nK:C\n"C"z7/8 "F"z25/8|]\n');
    expect(read.left).toEqual(['Chords that begin between sixteenths went to the nearest.']);
    expect(read.text.split('\n').at(-1)).toBe('| C / / / F / / / / / / / / / / / ||');
  });

  it('keeps sections, their keys, and rests', () => {
    const text =
      'Title: Lantern Walk\nKey: G\n[A] G7 | N.C. | C7 N.C.\nKey: D\nD7 | A7\n[Trio]\nKey: C\nC | F / / G7\n[A]';
    const { chart } = readChart(text, { tonic: 'C', mode: 'major', meter: '4/4', title: '' });
    const back = chartOf(writeAbc({ chart, tempo: 92, feel: 'Rag' }));
    expect(back.bars.map(({ key }) => key?.tonic)).toEqual(chart.bars.map(({ key }) => key?.tonic));
    expect(back.bars.map(({ place }) => place)).toEqual(chart.bars.map(({ place }) => place));
    expect(chartRow(back)).toBe(chartRow(chart));
    expect(back.title).toBe('Lantern Walk');
  });
});
