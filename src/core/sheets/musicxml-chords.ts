import { readChord } from '../chart-text/read-chord';
import { childrenOf, numberAt, textAt, type XmlNode } from './xml-node';

/** Chord kinds of MusicXML 4.0 (`kind-value` of its schema) as the suffixes charts write. */
const SUFFIXES: Readonly<Record<string, string>> = {
  major: '',
  minor: 'm',
  augmented: 'aug',
  diminished: 'dim',
  dominant: '7',
  'major-seventh': 'maj7',
  'minor-seventh': 'm7',
  'diminished-seventh': 'dim7',
  'augmented-seventh': '7#5',
  'half-diminished': 'm7b5',
  'major-minor': 'mMaj7',
  'major-sixth': '6',
  'minor-sixth': 'm6',
  'dominant-ninth': '9',
  'major-ninth': 'maj9',
  'minor-ninth': 'm9',
  'dominant-11th': '11',
  'major-11th': 'maj11',
  'minor-11th': 'm11',
  'dominant-13th': '13',
  'major-13th': 'maj13',
  'minor-13th': 'm13',
  'suspended-second': 'sus2',
  'suspended-fourth': 'sus4',
  power: '5',
};

const noteName = (node: XmlNode, part: 'root' | 'bass'): string => {
  const alter = Math.round(numberAt(node, part, `${part}-alter`) ?? 0);
  const sign = (alter < 0 ? 'b' : '#').repeat(Math.min(Math.abs(alter), 2));
  return textAt(node, part, `${part}-step`) + sign;
};

const degreeText = (degree: XmlNode, suffix: string): string => {
  const value = numberAt(degree, 'degree-value') ?? 0;
  const alter = numberAt(degree, 'degree-alter') ?? 0;
  const type = textAt(degree, 'degree-type');
  if (type === 'subtract') return `(no${value})`;
  if (type === 'add' && value === 2 && suffix === 'sus4') return 'sus2';
  // Added sevenths are relative to a dominant chord's, the minor one.
  if (type === 'add' && value === 7 && alter === 1) return 'maj7';
  const sign = alter < 0 ? 'b' : alter > 0 ? '#' : '';
  const hasSeventh = /7|9|11|13/.test(suffix);
  return sign === '' || (type === 'add' && !hasSeventh) ? `(add${sign}${value})` : `(${sign}${value})`;
};

/**
 * A `harmony` element as a chord symbol: root, kind, degrees and bass; the kind's own text where a chart cannot read
 * what they make; `N.C.` for kind `none`. Null where it has no root (a numeral, a function).
 */
export const symbolOf = (harmony: XmlNode): string | null => {
  const kind = textAt(harmony, 'kind');
  if (kind === 'none') return 'N.C.';
  const root = noteName(harmony, 'root');
  if (root === '') return null;
  const bass = noteName(harmony, 'bass');
  const over = bass === '' ? '' : `/${bass}`;
  const suffix = SUFFIXES[kind];
  const written = childrenOf(harmony, 'kind')[0]?.attributes.text ?? '';
  const degrees = childrenOf(harmony, 'degree').map((degree) => degreeText(degree, suffix ?? ''));
  const built = `${root}${suffix ?? written}${degrees.join('')}${over}`;
  const read = readChord(built, 'C');
  return read !== null && read.rest === '' ? built : `${root}${written || (suffix ?? '')}${over}`;
};
