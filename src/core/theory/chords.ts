import { ChordType, Chord as TonalChord } from 'tonal';
import type { Chord, ChordTone, Degree, NoteName } from './chord';
import { degreeOf, toneOf } from './degrees';
import { isNoteName, pitchClassOf } from './pitch';

/** What determines a chord. */
export interface ChordSpec {
  readonly root: NoteName;
  /** Any spelling of the quality tonal knows: `7`, `m7b5`, `maj7`, `°7`, ``. */
  readonly quality: string;
  /** The lowest note where it is not the root. */
  readonly bass?: NoteName;
  /** Roman numeral in the key it stands in. */
  readonly roman?: string;
}

/** What can serve as a chord's third and as its seventh, the usual one first. */
const THIRDS: readonly Degree[] = ['3', 'b3', '4', '2'];
const SEVENTHS: readonly Degree[] = ['b7', '7', 'bb7', '6'];

const tonesOf = (root: NoteName, intervals: readonly string[]): readonly ChordTone[] =>
  intervals.map((interval) => toneOf(root, degreeOf(interval)));

/**
 * Spellings preferred to tonal's first one: nothing for a major triad, no slash that looks like a bass, no accidental
 * that would read as the root's.
 */
const PREFERRED: Readonly<Record<string, string>> = {
  M: '',
  'm/ma7': 'mMaj7',
  b9sus: '7b9sus4',
  Madd9: 'add9',
  '6add9': '69',
};

/** The quality's usual short spelling (`min7` → `m7`, `°7` → `dim7`, `M` → ``), or null when it is unknown. */
export const canonicalQuality = (quality: string): string | null => {
  const type = ChordType.get(quality === '' ? 'M' : quality);
  // A name such as `constructor` finds something in tonal's table that is no chord type.
  const first: unknown = Array.isArray(type.aliases) ? type.aliases[0] : undefined;
  if (type.empty || typeof first !== 'string') return null;
  return PREFERRED[first] ?? first;
};

/**
 * A chord from root and quality, its tones spelled as theory demands (Gb7 holds Fb).
 * Throws RangeError when the root or bass is no note name or the quality is unknown.
 */
export const chordOf = ({ root, quality, bass, roman = '' }: ChordSpec): Chord => {
  if (!isNoteName(root)) throw new RangeError(`Not a root: "${root}"`);
  if (bass !== undefined && !isNoteName(bass)) throw new RangeError(`Not a bass note: "${bass}"`);
  const canonical = canonicalQuality(quality);
  if (canonical === null) throw new RangeError(`Unknown chord quality: "${quality}"`);
  const { intervals } = ChordType.get(canonical === '' ? 'M' : canonical);
  const rootClass = pitchClassOf(root);
  const bassClass = bass === undefined ? rootClass : pitchClassOf(bass);
  const slash = bass !== undefined && bassClass !== rootClass ? `/${bass}` : '';
  return {
    roman,
    symbol: `${root}${canonical}${slash}`,
    root: rootClass,
    rootName: root,
    quality: canonical,
    bass: bassClass,
    tones: tonesOf(root, intervals),
  };
};

/** Spellings musicians use that tonal does not list, turned into ones it does (common practice, no source). */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/♭/g, 'b'],
  [/♯/g, '#'],
  [/[△∆]/g, 'Δ'],
  [/Δ(?=7)/g, 'maj'],
  [/Ø/g, 'ø'],
  [/ø7/g, 'ø'],
  [/[º˚]/g, '°'],
  [/[()\s]/g, ''],
  [/^([A-G][#b]{0,2})(?:maj|Maj|MAJ)(?=6|$)/, '$1'],
  [/^([A-G][#b]{0,2})(?:mi|min)(?=6|9|11|13|7b5|$)/, '$1m'],
];

/** Reads a chord symbol as musicians write it (`Bb7`, `F#ø7`, `C△7/E`), or null when it names no known chord. */
export const readSymbol = (symbol: string, roman = ''): Chord | null => {
  const plain = SPELLINGS.reduce((text, [from, to]) => text.replace(from, to), symbol);
  const [tonic, type, bass] = TonalChord.tokenize(plain);
  if (tonic === undefined || type === undefined || !isNoteName(tonic) || !/^[A-G]/.test(plain)) return null;
  if (canonicalQuality(type) === null || (bass && !isNoteName(bass))) return null;
  return chordOf(bass ? { root: tonic, quality: type, bass, roman } : { root: tonic, quality: type, roman });
};

/**
 * The chord's guide tones, the ones that mark a change: its third and seventh, or what stands for them (the 4 of a
 * sus chord, the 6 of a sixth chord). A triad has one, a bare fifth none.
 */
export const guideTones = (chord: Chord): readonly ChordTone[] =>
  [THIRDS, SEVENTHS].flatMap((degrees) => {
    const degree = degrees.find((each) => chord.tones.some((tone) => tone.degree === each));
    return chord.tones.filter((tone) => tone.degree === degree);
  });
