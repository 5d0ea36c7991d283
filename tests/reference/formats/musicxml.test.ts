import { describe, expect, it } from 'vitest';
import { buildChart, METERS } from '../../../src/core/chart/build-chart';
import type { MeterName } from '../../../src/core/chart/chart';
import { FORM_IDS } from '../../../src/core/chart/forms';
import { keyFifths } from '../../../src/core/formats/key-fifths';
import { swingFraction, writeMusicXml } from '../../../src/core/formats/musicxml';
import { chordKind } from '../../../src/core/formats/musicxml-kinds';
import { chordOf } from '../../../src/core/theory/chords';
import { asBpm, asPitchClass, asTicks } from '../../../src/core/theory/units';
import { DICTIONARY } from '../../helpers/chord-dictionary';
import { readXml } from '../../helpers/musicxml-reading';
import { type ParsedElement, schemaProblems } from '../../helpers/musicxml-schema';

const METER_NAMES = Object.values(METERS).map(({ name }) => name);

const sheetOf = (form: (typeof FORM_IDS)[number], key: number, meter: MeterName) => ({
  chart: buildChart({ form, key: asPitchClass(key), meter }),
  tempo: asBpm(96.5),
  feel: 'Shuffle & more',
  swing: { ratio: 1.3, unit: 'eighth' } as const,
  harp: 'C harp, 2nd position <cross>',
  tab: [
    { at: asTicks(0), text: '-2 "-3"' },
    { at: asTicks(1000), text: '4' },
  ],
});

describe('MusicXML 4.0, musicxml.xsd (W3C, 2021)', () => {
  it.each(FORM_IDS)('orders the elements of %s as the schema does, in every key and meter', (form) => {
    const inKeys = Array.from({ length: 12 }, (_, key) => sheetOf(form, key, '4/4'));
    const inMeters = METER_NAMES.map((meter) => sheetOf(form, 7, meter));
    for (const sheet of [...inKeys, ...inMeters]) {
      expect(schemaProblems(readXml(writeMusicXml(sheet)))).toEqual([]);
    }
  });

  // `swing`: `first` and `second` are positive integers in lowest terms; 1.3 : 1 is 13 : 10.
  it.each([
    [2, [2, 1]],
    [1.5, [3, 2]],
    [1.3, [13, 10]],
    [3.5, [7, 2]],
    [1, [1, 1]],
  ])('writes a swing of %d : 1 as %o', (ratio, fraction) => {
    expect(swingFraction(ratio)).toEqual(fraction);
  });

  // Names of `kind-value`; a half-diminished chord is a kind of its own, altered tones are degrees.
  it.each([
    ['', 'major', []],
    ['m', 'minor', []],
    ['7', 'dominant', []],
    ['m7', 'minor-seventh', []],
    ['maj7', 'major-seventh', []],
    ['m7b5', 'half-diminished', []],
    ['dim7', 'diminished-seventh', []],
    ['dim', 'diminished', []],
    ['aug', 'augmented', []],
    ['7#5', 'augmented-seventh', []],
    ['6', 'major-sixth', []],
    ['m6', 'minor-sixth', []],
    ['9', 'dominant-ninth', []],
    ['13', 'dominant-13th', []],
    ['sus4', 'suspended-fourth', []],
    ['5', 'power', []],
    ['mMaj7', 'major-minor', []],
    ['7b9', 'dominant', ['add 9 -1']],
    ['7#9', 'dominant', ['add 9 1']],
    ['7b5', 'dominant', ['alter 5 -1']],
    ['7sus4', 'suspended-fourth', ['add 7 0']],
    ['maj9#11', 'major-ninth', ['add 11 1']],
    ['7no5', 'dominant', ['subtract 5 0']],
  ])('names the chord "%s" as %s with %o', (quality, kind, changes) => {
    const found = chordKind(chordOf({ root: 'C', quality }));
    expect(found.kind).toBe(kind);
    expect(found.changes.map(({ type, value, alter }) => `${type} ${value} ${alter}`)).toEqual(changes);
  });
});

/** What each kind stands for, as semitones by degree: common practice, no source. */
const KIND_TONES: Readonly<Record<string, readonly (readonly [number, number])[]>> = (() => {
  const triads = { major: [4, 7], minor: [3, 7], augmented: [4, 8], diminished: [3, 6] } as const;
  const on = (triad: keyof typeof triads, ...more: (readonly [number, number])[]) =>
    [[1, 0], [3, triads[triad][0]], [5, triads[triad][1]], ...more] as const;
  return {
    major: on('major'),
    minor: on('minor'),
    augmented: on('augmented'),
    diminished: on('diminished'),
    dominant: on('major', [7, 10]),
    'major-seventh': on('major', [7, 11]),
    'minor-seventh': on('minor', [7, 10]),
    'diminished-seventh': on('diminished', [7, 9]),
    'augmented-seventh': on('augmented', [7, 10]),
    'half-diminished': on('diminished', [7, 10]),
    'major-minor': on('minor', [7, 11]),
    'major-sixth': on('major', [6, 9]),
    'minor-sixth': on('minor', [6, 9]),
    'suspended-fourth': [
      [1, 0],
      [4, 5],
      [5, 7],
    ],
    'suspended-second': [
      [1, 0],
      [2, 2],
      [5, 7],
    ],
    power: [
      [1, 0],
      [5, 7],
    ],
    'dominant-ninth': on('major', [7, 10], [9, 14]),
    'major-ninth': on('major', [7, 11], [9, 14]),
    'minor-ninth': on('minor', [7, 10], [9, 14]),
    'dominant-11th': on('major', [7, 10], [9, 14], [11, 17]),
    'major-11th': on('major', [7, 11], [9, 14], [11, 17]),
    'minor-11th': on('minor', [7, 10], [9, 14], [11, 17]),
    'dominant-13th': on('major', [7, 10], [9, 14], [13, 21]),
    'major-13th': on('major', [7, 11], [9, 14], [13, 21]),
    'minor-13th': on('minor', [7, 10], [9, 14], [13, 21]),
  };
})();

// `degree-alter`: for `add` it counts from a dominant chord's scale, for `alter` from the kind's own degree.
const MIXOLYDIAN = [0, 2, 4, 5, 7, 9, 10];
const readBack = ({ kind, changes }: ReturnType<typeof chordKind>): readonly number[] => {
  let tones = [...(KIND_TONES[kind] ?? [])];
  for (const { type, value, alter } of changes) {
    if (type === 'subtract') tones = tones.filter(([degree]) => degree !== value);
    if (type === 'alter')
      tones = tones.map(([degree, height]) =>
        degree === value ? [degree, height + alter] : [degree, height],
      );
    if (type === 'add')
      tones.push([value, (MIXOLYDIAN[(value - 1) % 7] ?? 0) + 12 * Math.floor((value - 1) / 7) + alter]);
  }
  return [...new Set(tones.map(([, height]) => height % 12))].sort((a, b) => a - b);
};

describe('every chord type of the tonal library', () => {
  it('is the same pitch classes after being named by kind and degrees', () => {
    expect(DICTIONARY.length).toBeGreaterThan(100);
    for (const quality of DICTIONARY) {
      const chord = chordOf({ root: 'C', quality });
      const wanted = [...new Set(chord.tones.map(({ pitchClass }) => Number(pitchClass)))].sort(
        (a, b) => a - b,
      );
      expect([quality, readBack(chordKind(chord))]).toEqual([quality, wanted]);
    }
  });
});

// The circle of fifths.
describe('key signatures', () => {
  it.each([
    ['C', 'major', 0],
    ['G', 'major', 1],
    ['F#', 'major', 6],
    ['F', 'major', -1],
    ['Bb', 'major', -2],
    ['Gb', 'major', -6],
    ['Cb', 'major', -7],
    ['A', 'minor', 0],
    ['E', 'minor', 1],
    ['G#', 'minor', 5],
    ['C', 'minor', -3],
    ['Eb', 'minor', -6],
    ['G#', 'major', -4],
    ['Fb', 'major', 4],
  ] as const)('%s %s has %i', (tonic, mode, fifths) => {
    expect(keyFifths(tonic, mode)).toBe(fifths);
  });

  it('refuses what is no note', () => {
    expect(() => keyFifths('H', 'major')).toThrow('Not a note name: "H"');
  });
});

describe('the schema table of these tests', () => {
  const good = readXml(writeMusicXml(sheetOf('standard', 7, '4/4')));
  const change = (
    element: ParsedElement,
    name: string,
    edit: (element: ParsedElement) => ParsedElement,
  ): ParsedElement => {
    const children = element.children.map((child) => change(child, name, edit));
    return element.name === name ? edit({ ...element, children }) : { ...element, children };
  };

  it.each([
    [
      'a missing child',
      'score-part',
      (e: ParsedElement) => ({ ...e, children: e.children.slice(1) }),
      'score-part needs part-name',
    ],
    [
      'a wrong order',
      'harmony',
      (e: ParsedElement) => ({ ...e, children: e.children.toReversed() }),
      'comes too late in harmony',
    ],
    [
      'a stranger',
      'note',
      (e: ParsedElement) => ({ ...e, children: [...e.children, { ...e, name: 'tab', children: [] }] }),
      'tab may not stand in note',
    ],
    [
      'a repeated child',
      'key',
      (e: ParsedElement) => ({ ...e, children: e.children.flatMap((c) => [c, c]) }),
      'key holds fifths 2 times',
    ],
    [
      'a missing attribute',
      'part',
      (e: ParsedElement) => ({ ...e, attributes: {} }),
      'part needs the attribute id',
    ],
    [
      'a foreign attribute',
      'rest',
      (e: ParsedElement) => ({ ...e, attributes: { full: 'yes' } }),
      'rest may not have full="yes"',
    ],
    ['a wrong value', 'kind', (e: ParsedElement) => ({ ...e, text: 'blues' }), 'kind may not be "blues"'],
    ['loose text', 'measure', (e: ParsedElement) => ({ ...e, text: 'hm' }), 'measure may not hold text'],
  ])('reports %s', (_, name, edit, message) => {
    expect(schemaProblems(good)).toEqual([]);
    expect(schemaProblems(change(good, name, edit)).join('\n')).toContain(message);
  });
});
