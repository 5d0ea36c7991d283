import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChart, transpose } from '../../../src/core/chart/build-chart';
import type { MeterName } from '../../../src/core/chart/chart';
import { FORM_IDS, FORMS } from '../../../src/core/chart/forms';
import { formAsText, printChart } from '../../../src/core/chart-text/print-chart';
import { type ChartReading, readChart } from '../../../src/core/chart-text/read-chart';
import { readChord } from '../../../src/core/chart-text/read-chord';
import { chordOf } from '../../../src/core/theory/chords';
import { keyName, PITCH_CLASSES } from '../../../src/core/theory/pitch';
import { asPitchClass, asTicks } from '../../../src/core/theory/units';
import { chartRow } from '../../helpers/chart-row';
import { DICTIONARY } from '../../helpers/chord-dictionary';
import { problemSentence } from '../../helpers/problem-sentence';
import { soakRuns } from '../../helpers/soak';
import { pitchesOf } from '../../helpers/test-charts';

const OPTIONS = { tonic: 'C', mode: 'major', meter: '4/4', title: 'Own' } as const;

const read = (text: string, meter: MeterName = '4/4'): ChartReading => readChart(text, { ...OPTIONS, meter });

const sentences = (text: string, meter: MeterName = '4/4'): readonly string[] =>
  read(text, meter).problems.map(problemSentence);

const RUNS = soakRuns(50);

describe('readChart', () => {
  it('takes a line of nothing but endings', () => {
    expect(read('[1'.repeat(10_000)).chart.bars).toHaveLength(1);
  });

  it.each([
    ['| C7 | F7 | C7 | G7 |', 'C7:4 | F7:4 | C7:4 | G7:4'],
    ['C7 | F7\nC7 | G7', 'C7:4 | F7:4 | C7:4 | G7:4'],
    ['| C7 A7 | Dm7 G7 ||', 'C7:2 A7:2 | Dm7:2 G7:2'],
    ['C7 / F7 / | C7 F7 / /', 'C7:2 F7:2 | C7:1 F7:3'],
    ['C7 . . G7 | C7// F7. | ////', 'C7:3 G7:1 | C7:2.4 F7:1.6 | F7:4'],
    ['C7 | / / F7 /', 'C7:4 | C7:2 F7:2'],
    ['C7 | % | F7 C7 | % | 𝄎', 'C7:4 | C7:4 | F7:2 C7:2 | F7:2 C7:2 | F7:2 C7:2'],
    ['C7 | | F7', 'C7:4 | C7:4 | F7:4'],
    ['C7 C7 F7 F7', 'C7:2 F7:2'],
    ['|: C7 | F7 :| G7', 'C7:4 | F7:4 | C7:4 | F7:4 | G7:4'],
    ['C7 :| F7 :| G7', 'C7:4 | C7:4 | F7:4 | F7:4 | G7:4'],
    ['𝄆 C7 𝄇 F7', 'C7:4 | C7:4 | F7:4'],
    ['I | IV | V7/ii | bVII7', 'C7:4 | F7:4 | A7:4 | Bb7:4'],
    ['Imaj vi7 | im', 'C:2 Am7:2 | Cm:4'],
    ['C /B /A G7', 'C:1 C/B:1 C/A:1 G7:1'],
    ['C△7/E | F♯ø7 | B♭7(♭9, 13)', 'Cmaj7/E:4 | F#m7b5:4 | Bb13b9:4'],
  ])('%j', (text, expected) => {
    expect(chartRow(read(text).chart)).toBe(expected);
  });

  it.each([
    ['3/4', 'C7 F7', 'C7:2 F7:1'],
    ['3/4', 'C7 / F7', 'C7:2 F7:1'],
    ['6/8', 'C7 F7', 'C7:1 F7:1'],
    ['12/8', 'C7 / / F7', 'C7:3 F7:1'],
    ['12/8', 'C7 / / / / / F7 / / / / /', 'C7:2 F7:2'],
  ] as const)('shares a bar of %s: %s', (meter, text, expected) => {
    const { chart, problems } = read(text, meter);
    expect(chartRow(chart)).toBe(expected);
    expect(problems).toEqual([]);
  });

  it.each([
    ['C7 | Hx | F7', ['Line 1, column 6: "Hx" is not a chord; the chord before it goes on.']],
    ['C7 |\n  c7', ['Line 2, column 3: "c7" is read as Cm7: a small letter is a minor chord.']],
    ['H7 | F7', ['Line 1, column 1: "H7" is not a chord; the chord before it goes on. Did you mean B7?']],
    ['C7omit7', ['"C7omit7" sounds as C7, without "omit7".']],
    ['C7 | % F7', ['"%" repeats a whole bar, but this bar holds something else too']],
    ['% | F7', ['"%" goes on with the chord before it, but there is none; C7 sounds.']],
    ['/ / F7 /', ['"/" goes on with the chord before it, but there is none; C7 sounds.']],
    ['C7 / F7', ['3 beats are written in a bar of 4; the first ones last longer.']],
    ['C7 F7 G7 C7 F7 G7', ['6 chords and beats share a bar of 4 beats equally.']],
    [`${'C7 '.repeat(17)}`, ['This bar holds 17 chords and beats, more than the 16 that fit']],
    ['|: C7 | F7', ['Line 1, column 1: This repeat has no end, so it is played once.']],
    ['|: C7 |: F7 :|', ['This repeat has no end']],
    [':| C7', ['This repeat holds no bars.']],
    ['', ['There are no bars yet, so one bar of C7 sounds.']],
    [' \n ', ['There are no bars yet']],
  ])('%j is explained', (text, expected) => {
    const found = sentences(text);
    expect(found).toHaveLength(expected.length);
    expected.forEach((part, i) => {
      expect(found[i]).toContain(part);
    });
  });

  it('plays what is not understood as the chord before it, or as the tonic', () => {
    expect(chartRow(read('C7 | what now | F7 what').chart)).toBe('C7:4 | C7:4 | F7:4');
    expect(chartRow(read('what').chart)).toBe('C7:4');
    expect(chartRow(readChart('what', { ...OPTIONS, tonic: 'A', mode: 'minor' }).chart)).toBe('Am7:4');
    expect(read('C7 | what | F7').bars.map(({ status }) => status)).toEqual(['read', 'unread', 'read']);
  });

  it('gets through a page pasted by mistake', () => {
    const page = `${'C1'.repeat(50_000)} ${'('.repeat(50_000)}\n${':|'.repeat(20_000)}${'/'.repeat(50_000)}`;
    const { source, chart } = read(page);
    expect(source).toBe(page);
    expect(chart.bars.length).toBeGreaterThan(0);
  });

  it('says a problem of a repeated bar once', () => {
    expect(sentences('|: C7 | foo :|')).toHaveLength(1);
  });

  it('keeps text past the longest chart, unplayed', () => {
    const reading = read('C7 | F7\n'.repeat(129));
    expect(reading.chart.bars).toHaveLength(256);
    expect(reading.bars).toHaveLength(258);
    expect(sentences(reading.source)).toEqual([
      'Line 129, column 1: A chart holds 256 bars; from here on the text is kept but not played. ' +
        'Make the chart shorter, or keep the rest as a second chart.',
    ]);
  });

  it('refuses a tonic that is none, which is no text of the player', () => {
    expect(() => readChart('C7', { ...OPTIONS, tonic: 'H' })).toThrow('Not a note name: "H"');
  });
});

const SNIPPETS = [
  ...['C7', 'F#m7b5', 'Bb7/D', 'Eb△7', 'G7(b9, 13)', 'A7alt', 'D13#11', 'Cadd9', 'H7', 'Hx', 'c7', 'N.C.'],
  ...['I', 'IV7', '#ivo7', 'V7/ii', 'bVII', 'ii7', '%', '𝄎', '/', '.', '//', '/B', '/Bb', '·', 'C7/.'],
  ...[
    '|',
    '||',
    '|:',
    ':|',
    ':|:',
    '𝄆',
    '𝄇',
    '‖',
    ' ',
    '  ',
    '\n',
    '\r\n',
    '\t',
    ',',
    ';',
    '(',
    ')',
    '(x y)',
  ],
  ...[
    'verse',
    'Verse:',
    '[A]',
    '[B]',
    'Order: A B A x2',
    'Key: Eb',
    'Tempo: 96',
    'Meter: 3/4',
    '[1',
    '[2.',
    '1,3',
    'x3',
    'D.C. al Fine',
    'D.S. al Coda',
    'Segno',
    'Fine',
    'To Coda',
    'Coda:',
    'C7!',
    '4',
    '6m',
    '1.',
    '♭',
    '♯',
    '°',
    'ø',
    '\u{1F3B5}',
    '\0',
    '\u2028',
    '__proto__',
    'constructor',
    'toString',
    'valueOf',
    ':',
    '-',
    '4/4',
  ],
];

const anyText = fc.oneof(
  fc.array(fc.constantFrom(...SNIPPETS), { maxLength: 40 }).map((parts) => parts.join('')),
  fc.array(fc.constantFrom(...SNIPPETS), { maxLength: 40 }).map((parts) => parts.join(' ')),
  fc.string({ unit: 'binary', maxLength: 60 }),
);

const anyOptions = fc.record({
  tonic: fc.constantFrom('C', 'F#', 'Bb', 'Gb', 'C#', 'Cb', 'A', 'Db'),
  mode: fc.constantFrom('major', 'minor'),
  meter: fc.constantFrom(...(['4/4', '3/4', '6/8', '12/8'] as const)),
  title: fc.constant('Own'),
});

const bare = (text: string): string => text.replace(/:?(?:\[(?=\|))?[|‖𝄀𝄁𝄂𝄃]+\]?:?|𝄆|𝄇|\s/gu, '');

describe('any text', () => {
  it('is read without throwing, kept whole, and gives a full chart', () => {
    fc.assert(
      fc.property(anyText, anyOptions, (text, options) => {
        const { source, chart, bars, signs, problems } = readChart(text, options);
        if (source !== text || chart.bars.length < 1 || chart.bars.length > 256) return false;
        let at = 0;
        for (const bar of chart.bars) {
          for (const span of bar.chords) {
            if (span.at !== at || span.length <= 0 || span.chord.tones.length < 2) return false;
            at += span.length;
          }
        }
        const unread = bars.filter(({ status }) => status === 'unread').length;
        const explained = problems.some(({ kind }) => kind === 'unread');
        return at === chart.length && (unread > 0 ? explained : !explained || signs.length > 0);
      }),
      { numRuns: RUNS },
    );
  });

  it('loses nothing: every sign but bar lines and blanks stands in some bar or sign, in order', () => {
    fc.assert(
      fc.property(anyText, anyOptions, (text, options) => {
        const { bars, unplayed, signs } = readChart(text, options);
        const seen = new Map(
          [...bars, ...unplayed, ...signs].map((each) => [`${each.line}:${each.column}`, each]),
        );
        const ordered = [...seen.values()].toSorted((a, b) => a.line - b.line || a.column - b.column);
        return bare(ordered.map((each) => each.text).join('')) === bare(text);
      }),
      { numRuns: RUNS },
    );
  });

  it('gives a chart that comes back after twelve fifths and prints in every key', () => {
    fc.assert(
      fc.property(anyText, anyOptions, (text, options) => {
        const { chart } = readChart(text, { ...options, tonic: keyName(asPitchClass(9), options.mode) });
        let moved = chart;
        for (let i = 0; i < 12; i += 1) {
          moved = transpose(moved, 7);
          const { tonic, mode, meter, title } = moved;
          const back = readChart(printChart(moved), { tonic, mode, meter: meter.name, title });
          expect(pitchesOf(back.chart)).toEqual(pitchesOf(moved));
        }
        expect(moved).toEqual(chart);
      }),
      { numRuns: 100 },
    );
  });
});

describe('printChart', () => {
  it('writes four bars a line and beats where a bar is shared unevenly', () => {
    const { chart } = read('C7 A7 | C7 / F7 G7 | C7 / / F7 | C7 | F7');
    expect(printChart(chart)).toBe('| C7 A7 | C7 / F7 G7 | C7 / / F7 | C7 |\n| F7 |');
  });

  it.each(FORM_IDS)('%s reads back as itself in every key, as symbols and as numerals', (form) => {
    for (const key of PITCH_CLASSES) {
      const chart = buildChart({ form, key, meter: '4/4' });
      const options = { tonic: chart.tonic, mode: chart.mode, meter: '4/4', title: chart.title } as const;
      for (const style of ['symbols', 'numerals'] as const) {
        const back = readChart(printChart(chart, style), options);
        expect(back.problems).toEqual([]);
        expect(back.chart).toEqual(chart);
        expect(readChart(formAsText(form, chart.tonic, style), options).chart).toEqual(chart);
      }
    }
  });

  it('writes every chord of the dictionary so that it reads back, on every root', () => {
    const roots = fc.constantFrom('C', 'F#', 'Bb', 'Gb', 'E', 'Db');
    fc.assert(
      fc.property(fc.constantFrom(...DICTIONARY), roots, roots, roots, (quality, root, bass, tonic) => {
        const chord = chordOf({ root, quality, bass });
        const options = { ...OPTIONS, tonic };
        const { chart, problems } = readChart(chord.symbol, options);
        expect(problems).toEqual([]);
        for (const style of ['symbols', 'numerals'] as const) {
          expect(readChart(printChart(chart, style), options).chart).toEqual(chart);
        }
        expect(chart.bars[0]?.chords[0]?.chord.tones.map((tone) => tone.pitchClass)).toEqual(
          chord.tones.map((tone) => tone.pitchClass),
        );
      }),
      { numRuns: 300 },
    );
  });

  it('refuses chords that change off every even part of the bar', () => {
    const { chart } = read('C7 F7');
    const bars = chart.bars.map((bar) => ({
      ...bar,
      chords: bar.chords.map((span, i) => (i === 0 ? span : { ...span, at: asTicks(719) })),
    }));
    expect(() => printChart({ ...chart, bars })).toThrow('do not lie on beats');
  });
});

describe('readChord', () => {
  it.each([
    ['C7-9', 'C7b9'],
    ['C7+9', 'C7#9'],
    ['CMI7', 'Cm7'],
    ['Cma9', 'Cmaj9'],
    ['Cm(maj7)', 'CmMaj7'],
    ['C−7', 'Cm7'],
    ['C^', 'Cmaj7'],
    ['C6/9/E', 'C69/E'],
    ['C7b9b5b13', 'C7b5b9b13'],
    ['C7b9b13sus', 'C7b9b13sus4'],
    ['vii°7/V', 'F#dim7'],
    ['iiø7', 'Dm7b5'],
    ['Gb7', 'Gb7'],
    ['F#7', 'F#7'],
  ])('%s is %s', (text, symbol) => {
    expect(readChord(text, 'C')).toMatchObject({ chord: { symbol }, rest: '' });
  });

  it('keeps the letter a root is written with, in its numeral', () => {
    expect(readChord('Gb7', 'C')?.chord.roman).toBe('bV7');
    expect(readChord('F#7', 'C')?.chord.roman).toBe('#IV7');
    expect(readChord('A7', 'Db')?.chord.roman).toBe('bVI7');
  });

  it.each(['', 'Coda', 'Cfoo', 'verse', '4/4', 'X', 'Chorus', 'Bridge', 'Am I', 'Intro'])(
    '%s is none',
    (text) => {
      expect(readChord(text, 'C')).toBeNull();
    },
  );

  it('of every form knows all numerals', () => {
    for (const id of FORM_IDS) {
      for (const roman of FORMS[id].lines.join(' ').split(/[|\s]+/)) {
        expect(readChord(roman, 'E')?.rest).toBe('');
      }
    }
  });
});
