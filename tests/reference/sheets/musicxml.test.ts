import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import type { Chart } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { writeMusicXml } from '../../../src/core/formats/musicxml';
import { readMusicXml } from '../../../src/core/sheets/read-musicxml';
import type { ImportedChart } from '../../../src/core/sheets/sheet-bars';
import { chordOf } from '../../../src/core/theory/chords';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';
import { chartRow } from '../../helpers/chart-row';
import { DICTIONARY } from '../../helpers/chord-dictionary';
import { readXml } from '../../helpers/musicxml-reading';
import { schemaProblems } from '../../helpers/musicxml-schema';

const opened = (xml: string): ImportedChart => {
  const read = readMusicXml(readXml(xml));
  if (typeof read === 'string') throw new Error(read);
  return read;
};

const chartOf = (xml: string): Chart =>
  readChart(opened(xml).text, { tonic: 'C', mode: 'major', meter: '4/4', title: '' }).chart;

const ATTRIBUTES =
  '<attributes><divisions>2</divisions><key><fifths>-2</fifths></key><time><beats>4</beats><beat-type>4</beat-type></time></attributes>';
const REST = '<note><rest/><duration>8</duration></note>';
const harmony = (step: string, kind: string, alter = 0): string =>
  `<harmony><root><root-step>${step}</root-step>${alter === 0 ? '' : `<root-alter>${alter}</root-alter>`}</root><kind>${kind}</kind></harmony>`;
const direction = (type: string, sound: string): string =>
  `<direction><direction-type>${type}</direction-type><sound ${sound}/></direction>`;
const score = (...measures: readonly string[]): string =>
  `<score-partwise version="4.0"><part-list><score-part id="P1"><part-name>L</part-name></score-part></part-list><part id="P1">${measures
    .map((content, i) => `<measure number="${i + 1}">${content}</measure>`)
    .join('')}</part></score-partwise>`;

// Fragments in the manner of the MusicXML 4.0 reference (W3C, 2021): `harmony`, `degree`, `offset`, `ending`, `sound`.
describe('MusicXML 4.0', () => {
  it('reads alterations, a bass, an offset and a rest of the band', () => {
    const xml = score(
      `${ATTRIBUTES}<harmony><root><root-step>B</root-step><root-alter>-1</root-alter></root><kind text="7">dominant</kind><degree><degree-value>9</degree-value><degree-alter>1</degree-alter><degree-type>add</degree-type></degree></harmony><harmony><root><root-step>E</root-step><root-alter>-1</root-alter></root><kind>major</kind><bass><bass-step>G</bass-step></bass><offset>4</offset></harmony>${REST}`,
      `<harmony><root><root-step text="">C</root-step></root><kind text="N.C.">none</kind></harmony>${REST}`,
    );
    expect(chartRow(chartOf(xml))).toBe('Bb7#9:2 Eb/G:2 | N.C.:4');
    expect(opened(xml).text).toContain('Key: Bb');
  });

  it('plays repeats with endings as the reference does', () => {
    const xml = score(
      `${ATTRIBUTES}<barline location="left"><repeat direction="forward"/></barline>${harmony('F', 'minor-seventh')}${REST}`,
      `<barline location="left"><ending number="1, 2" type="start"/></barline>${harmony('C', 'half-diminished')}${REST}<barline location="right"><ending number="1, 2" type="stop"/><repeat direction="backward"/></barline>`,
      `<barline location="left"><ending number="3" type="start"/></barline>${harmony('B', 'major-sixth', -1)}${REST}<barline location="right"><ending number="3" type="discontinue"/></barline>`,
    );
    expect(chartRow(chartOf(xml))).toBe('Fm7:4 | Cm7b5:4 | Fm7:4 | Cm7b5:4 | Fm7:4 | Bb6:4');
  });

  it('goes from the sign to the coda', () => {
    const xml = score(
      `${ATTRIBUTES}${harmony('G', 'minor')}${REST}`,
      `${direction('<segno/>', 'segno="s"')}${harmony('C', 'minor-seventh')}${REST}`,
      `${harmony('F', 'dominant')}${REST}${direction('<words>To Coda</words>', 'tocoda="c"')}`,
      `${harmony('D', 'dominant')}${REST}${direction('<words>D.S. al Coda</words>', 'dalsegno="s"')}`,
      `${direction('<coda/>', 'coda="c"')}${harmony('G', 'power')}${REST}`,
    );
    expect(chartRow(chartOf(xml))).toBe('Gm:4 | Cm7:4 | F7:4 | D7:4 | Cm7:4 | F7:4 | G5:4');
  });

  // W3C MusicXML 4.0, `key`: it holds until the next; `attributes` stand at the head of a measure, before directions.
  it('keeps a key through the sections it goes through, and back', () => {
    const key = (fifths: number): string =>
      `<attributes><key><fifths>${fifths}</fifths><mode>major</mode></key></attributes>`;
    const mark = (name: string): string =>
      `<direction><direction-type><rehearsal>${name}</rehearsal></direction-type></direction>`;
    const xml = score(
      `${ATTRIBUTES}${mark('A')}${harmony('B', 'major', -1)}${REST}`,
      `${key(-3)}${mark('Trio')}${harmony('E', 'major', -1)}${REST}`,
      `${mark('B')}${harmony('A', 'major', -1)}${REST}`,
      `${key(-2)}${harmony('F', 'dominant')}${REST}`,
      `${mark('C')}${harmony('B', 'major', -1)}${REST}`,
    );
    expect(chartOf(xml).bars.map(({ key: own }) => own?.tonic ?? 'Bb')).toEqual([
      ...['Bb', 'Eb', 'Eb', 'Bb', 'Bb'],
    ]);
  });

  // W3C MusicXML 4.0, `measure`: "implicit" is yes for measures that are not counted, such as pickup measures.
  it('takes an uncounted first measure with chords for the pick-up', () => {
    const half = '<note><rest/><duration>2</duration></note>';
    const xml = score(
      `${ATTRIBUTES}${harmony('C', 'minor-seventh')}${half}${half}${harmony('F', 'dominant')}${half}`,
      `${harmony('B', 'major', -1)}${REST}`,
    ).replace('number="1"', 'number="0" implicit="yes"');
    expect(opened(xml).text).toContain('Pick-up: Cm7 / F7\n');
    expect(opened(xml).left).toEqual([]);
    expect(chartRow(chartOf(xml))).toBe('Bb:4');
    const bare = xml.replaceAll(/<harmony>.*?<\/harmony>(?=<note>.*?number="2")/g, '');
    expect(opened(bare).left).toEqual(['The upbeat was left out: the band counts in.']);
  });

  // MusicXML 4.0, `key`: the signature is the traditional one of the mode; which tonic that is: any table of modes.
  it.each([
    [0, 'dorian', 'Dm'],
    [0, 'mixolydian', 'G'],
    [-1, 'mixolydian', 'C'],
    [1, 'lydian', 'C'],
    [2, 'phrygian', 'F#m'],
    [-3, 'aeolian', 'Cm'],
    [0, 'locrian', 'Bm'],
    [-6, 'major', 'Gb'],
    [-7, 'minor', 'Abm'],
    [4, 'none', 'E'],
  ])('%i fifths in %s are %s', (fifths, mode, key) => {
    const signature = `<key><fifths>${fifths}</fifths><mode>${mode}</mode></key>`;
    const xml = score(ATTRIBUTES.replace(/<key>.*<\/key>/, signature) + harmony('C', 'major') + REST);
    expect(opened(xml).text).toContain(`Key: ${key}\n`);
  });

  it('says what it cannot use', () => {
    expect(readMusicXml(readXml('<score-timewise/>'))).toContain('measure by measure');
    expect(readMusicXml(readXml('<html/>'))).toBe('This is no MusicXML score.');
    expect(readMusicXml(readXml(score(ATTRIBUTES + REST)))).toContain('no chord symbols');
  });
});

describe('lead sheets of this program', () => {
  it.each(FORM_IDS)('%s comes back bar for bar', (form) => {
    for (const [key, meter] of [
      [7, '4/4'],
      [1, '12/8'],
    ] as const) {
      const chart = buildChart({ form, key: asPitchClass(key), meter });
      const xml = writeMusicXml({
        chart,
        tempo: asBpm(96),
        feel: 'Shuffle',
        swing: null,
        harp: 'C harp',
        tab: [],
      });
      expect(chartRow(chartOf(xml))).toBe(chartRow(chart));
    }
  });

  it('come back with their pick-up, and are as the schema has them', () => {
    const text = 'Pick-up: N.C. D7 /\n[A] G7 | C7\n[B] G7 | D7 G7';
    const { chart } = readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Hall' });
    const xml = writeMusicXml({ chart, tempo: asBpm(96), feel: 'Shuffle', swing: null });
    expect(chartOf(xml)).toEqual(chart);
    expect(schemaProblems(readXml(xml))).toEqual([]);
  });

  it('come back with the keys of their sections', () => {
    const text =
      'Key: G\n[A] G7 | C7\n[Trio]\nKey: C\nC | F\n[B]\nKey: C\nC | G7\nKey: Em\nEm | B7\nKey: G\nG | D7\n[C]\nG | C';
    const { chart } = readChart(text, { tonic: 'G', mode: 'major', meter: '4/4', title: 'Hall' });
    const xml = writeMusicXml({ chart, tempo: asBpm(96), feel: 'Shuffle', swing: null });
    expect(schemaProblems(readXml(xml))).toEqual([]);
    expect(xml.match(/<fifths>.*?<\/mode>/gs)?.map((key) => key.replace(/<[^>]*>|\s/g, ''))).toEqual([
      '1major',
      '0major',
      '1minor',
      '1major',
    ]);
    expect(chartOf(xml).bars.map(({ key }) => key?.tonic ?? 'G')).toEqual(
      chart.bars.map(({ key }) => key?.tonic ?? 'G'),
    );
  });

  it('bring every chord of the dictionary back with the same tones', () => {
    const base = buildChart({ form: 'standard', key: asPitchClass(0), meter: '4/4' });
    const chords = DICTIONARY.map((quality) => chordOf({ root: 'Eb', quality }));
    for (let from = 0; from < chords.length; from += 12) {
      const some = chords.slice(from, from + 12);
      const bars = base.bars.slice(0, some.length).map((bar, i) => ({
        ...bar,
        chords: bar.chords.map((span) => ({ ...span, chord: some[i] ?? span.chord })),
      }));
      const chart = { ...base, bars };
      const xml = writeMusicXml({ chart, tempo: asBpm(96), feel: 'Swing', swing: null, harp: '', tab: [] });
      expect(
        chartOf(xml).bars.map(({ chords: [span] }) => span?.chord.tones.map((tone) => tone.pitchClass)),
      ).toEqual(some.map((chord) => chord.tones.map((tone) => tone.pitchClass)));
    }
  });
});
