import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layChart, METERS } from '../../../src/core/chart/build-chart';
import type { Chart, MeterName } from '../../../src/core/chart/chart';
import { type LeadSheet, writeMusicXml } from '../../../src/core/formats/musicxml';
import { element, renderXml } from '../../../src/core/formats/xml';
import { readSymbol } from '../../../src/core/theory/chords';
import { asBpm, asTicks } from '../../../src/core/theory/units';
import { findAll, readXml, textOf } from '../../helpers/musicxml-reading';
import { schemaProblems } from '../../helpers/musicxml-schema';
import { twelveBars } from '../../helpers/sections';

const chartOf = (bars: readonly string[], meter: MeterName = '4/4'): Chart =>
  layChart({
    title: 'Hall blues',
    mode: 'major',
    tonic: 'Bb',
    meter: METERS[meter],
    bars: bars.map((bar) =>
      bar.split(' ').map((symbol) => {
        const chord = readSymbol(symbol);
        if (chord === null) throw new Error(`No chord: ${symbol}`);
        return chord;
      }),
    ),
  });

const sheet = (chart: Chart, more: Partial<LeadSheet> = {}) =>
  readXml(writeMusicXml({ chart, tempo: asBpm(112), feel: 'Shuffle', swing: null, ...more }));

/** Harmonies and durations of a measure in order, as short text. */
const contents = (chart: Chart, bar: number) =>
  (findAll(sheet(chart), 'measure')[bar]?.children ?? [])
    .filter(({ name }) => name === 'harmony' || name === 'note')
    .map((child) =>
      child.name === 'note'
        ? `${textOf(child, 'type') ?? 'bar'}${findAll(child, 'dot').length > 0 ? '.' : ''} ${textOf(child, 'duration')}`
        : [
            textOf(child, 'root-step'),
            textOf(child, 'root-alter'),
            textOf(child, 'kind'),
            textOf(child, 'offset'),
          ]
            .filter((part) => part !== null)
            .join(' '),
    );

describe('a lead sheet', () => {
  it('tells title, key, meter, tempo and instrument', () => {
    const root = sheet(chartOf(['Bb7']));
    expect(
      [
        'work-title',
        'divisions',
        'fifths',
        'mode',
        'beats',
        'beat-type',
        'beat-unit',
        'per-minute',
        'words',
        'part-name',
        'midi-program',
      ].map((name) => textOf(root, name)),
    ).toEqual(['Hall blues', '480', '-2', 'major', '4', '4', 'quarter', '112', 'Shuffle', 'Harmonica', '23']);
    expect(findAll(root, 'sound')[0]?.attributes).toEqual({ tempo: '112' });
  });

  it('counts dotted quarters in compound meters, and sounds at their quarters', () => {
    const root = sheet(chartOf(['Bb7'], '12/8'), { tempo: asBpm(60) });
    expect(findAll(root, 'metronome')[0]?.children.map(({ name, text }) => [name, text])).toEqual([
      ['beat-unit', 'quarter'],
      ['beat-unit-dot', ''],
      ['per-minute', '60'],
    ]);
    expect(findAll(root, 'sound')[0]?.attributes).toEqual({ tempo: '90' });
  });

  it.each([
    [null, []],
    [{ ratio: 1, unit: 'eighth' }, []],
    [{ ratio: 2, unit: 'eighth' }, ['2', '1', 'eighth']],
    [{ ratio: 1.4, unit: '16th' }, ['7', '5', '16th']],
  ] as const)('marks the swing %o', (swing, texts) => {
    expect(
      findAll(sheet(twelveBars(), { swing }), 'swing').flatMap((mark) =>
        mark.children.map(({ text }) => text),
      ),
    ).toEqual(texts);
  });

  it.each([
    ['one chord to the bar', '4/4', 'Bb7', ['B -1 dominant', 'bar 1920']],
    [
      'two chords',
      '4/4',
      'Bb7 Eb7',
      ['B -1 dominant', 'quarter 480', 'quarter 480', 'E -1 dominant', 'quarter 480', 'quarter 480'],
    ],
    [
      'two chords in three beats',
      '3/4',
      'C7 F#m7b5',
      ['C dominant', 'quarter 480', 'quarter 480', 'F 1 half-diminished', 'quarter 480'],
    ],
    ['two chords in a compound bar', '6/8', 'G C', ['G major', 'quarter. 720', 'C major', 'quarter. 720']],
    ['more chords than beats', '6/8', 'G C D', ['G major', 'C major 480', 'D major 960', 'bar 1440']],
  ] as const)('writes %s', (_, meter, bar, expected) => {
    expect(contents(chartOf([bar], meter), 0)).toEqual(expected);
  });

  it('fills every measure and begins a line every four bars', () => {
    const root = sheet(twelveBars('12/8'));
    const measures = findAll(root, 'measure');
    expect(measures.map(({ attributes }) => Number(attributes.number))).toEqual(
      Array.from({ length: 12 }, (_, i) => i + 1),
    );
    for (const measure of measures) {
      const total = findAll(measure, 'duration').reduce((sum, { text }) => sum + Number(text), 0);
      expect(total).toBe(2880);
    }
    expect(measures.map((measure) => findAll(measure, 'print').length)).toEqual([
      0, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0,
    ]);
    expect(measures.map((measure) => findAll(measure, 'barline').length)).toEqual([...Array(11).fill(0), 1]);
  });

  it('writes the bass of a slash chord, and the symbol as the chart has it', () => {
    const [harmony] = findAll(sheet(chartOf(['C7/Bb'])), 'harmony');
    if (!harmony) throw new Error('no harmony');
    expect([textOf(harmony, 'bass-step'), textOf(harmony, 'bass-alter')]).toEqual(['B', '-1']);
    expect(findAll(harmony, 'kind')[0]?.attributes).toEqual({ text: '7' });
  });

  it('puts tab under the beat it belongs to', () => {
    const tab = [
      { at: asTicks(0), text: '-2' },
      { at: asTicks(2400), text: "-3' & 4" },
    ];
    const root = sheet(chartOf(['Bb7', 'Bb7 F7', 'Bb7']), { tab, harp: 'Eb harp, 2nd position' });
    const found = findAll(root, 'measure').map((measure) =>
      findAll(measure, 'direction')
        .filter(({ attributes }) => attributes.placement === 'below')
        .map((direction) => [textOf(direction, 'words'), textOf(direction, 'offset')]),
    );
    expect(found).toEqual([[['-2', null]], [["-3' & 4", '480']], []]);
    expect(findAll(root, 'words').map(({ text }) => text)).toContain('Eb harp, 2nd position');
  });

  it('needs a bar and a swing of at least 1', () => {
    const chart = twelveBars();
    expect(() => sheet({ ...chart, bars: [] })).toThrow('at least one bar');
    expect(() => sheet(chart, { swing: { ratio: 0.5, unit: 'eighth' } })).toThrow('at least 1, got 0.5');
  });

  it('stays well-formed and in order whatever the texts are', () => {
    const text = fc.string({ unit: 'binary', maxLength: 20 });
    fc.assert(
      fc.property(text, text, text, fc.nat(12 * 1920 - 1), (title, feel, words, at) => {
        const chart = { ...twelveBars(), title };
        const root = sheet(chart, { feel, tab: [{ at: asTicks(at), text: words }] });
        expect(schemaProblems(root)).toEqual([]);
        expect(findAll(root, 'measure')).toHaveLength(12);
      }),
    );
  });
});

describe('XML', () => {
  it('escapes what must be escaped and drops what cannot be written', () => {
    const text = renderXml(
      element('a', [element('b', 'x < y & "z" \u0000\u0007\ud800 ♭')], { q: 'a"b<', n: undefined }),
      '<!DOCTYPE a>',
    );
    expect(text.split('\n')).toEqual([
      '<?xml version="1.0" encoding="UTF-8" standalone="no"?>',
      '<!DOCTYPE a>',
      '<a q="a&quot;b&lt;">',
      '  <b>x &lt; y &amp; &quot;z&quot;  ♭</b>',
      '</a>',
      '',
    ]);
  });
});
