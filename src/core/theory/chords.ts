import type { Chord, ChordTone, Degree, NoteName } from './chord';
import { degreeBetween, toneOf } from './degrees';
import { isNoteName, pitchClassOf, withoutDoubleAccidental } from './pitch';
import { readQuality } from './quality';
import { qualityName } from './quality-name';
import { symbolParts } from './symbol-parts';

/** What determines a chord. */
export interface ChordSpec {
  readonly root: NoteName;
  /** Any spelling of the quality: `7`, `m7b5`, `maj7`, `°7`, ``. */
  readonly quality: string;
  /** The lowest note where it is not the root. */
  readonly bass?: NoteName;
  /** Roman numeral in the key it stands in. */
  readonly roman?: string;
}

/** What can serve as a chord's third and as its seventh, the usual one first. */
const THIRDS: readonly Degree[] = ['3', 'b3', '4', '11', '2'];
const SEVENTHS: readonly Degree[] = ['b7', '7', 'bb7', '6'];

interface Quality {
  readonly name: string;
  readonly degrees: readonly Degree[];
}

/** Qualities met lately: a chart asks for the same few again and again. Emptied when full, so no text can fill it. */
const met = new Map<string, Quality | null>();
const MOST_MET = 500;

const qualityOf = (text: string): Quality | null => {
  const known = met.get(text);
  if (known !== undefined) return known;
  const degrees = readQuality(text);
  const quality = degrees && { name: qualityName(degrees), degrees };
  if (met.size >= MOST_MET) met.clear();
  met.set(text, quality);
  return quality;
};

/** The quality's usual short spelling (`min7` → `m7`, `°7` → `dim7`, `M` → ``), or null when it is unknown. */
export const canonicalQuality = (quality: string): string | null => qualityOf(quality)?.name ?? null;

/** Names that are another letter's plain note; written only where the step asks for that letter. */
const STRANGE: Readonly<Record<string, NoteName>> = { Cb: 'B', Fb: 'E', 'E#': 'F', 'B#': 'C' };

/** Steps of the scales chords come from: a bass there keeps its letter whatever the name (`Db/Cb`). */
const PLAIN_DEGREES: readonly Degree[] = ['b2', '2', 'b3', '3', '4', '5', 'b6', '6', 'b7', '7'];

/**
 * The bass as musicians write it: a tone of the chord as the chord spells it, another as given, always without
 * double accidentals, and without a strange name where the step is a chromatic one (`F/B`, not `F/Cb`).
 */
const bassNameIn = (root: NoteName, tones: readonly ChordTone[], bass: NoteName): NoteName => {
  const pitchClass = pitchClassOf(bass);
  const own = tones.find((tone) => tone.pitchClass === pitchClass);
  if (own !== undefined) return withoutDoubleAccidental(own.name);
  const name = withoutDoubleAccidental(bass);
  return PLAIN_DEGREES.includes(degreeBetween(root, name)) ? name : (STRANGE[name] ?? name);
};

/**
 * A chord from root and quality, its tones spelled as theory demands (Gb7 holds Fb).
 * Throws RangeError when the root or bass is no note name or the quality is unknown.
 */
export const chordOf = ({ root, quality, bass, roman = '' }: ChordSpec): Chord => {
  if (!isNoteName(root)) throw new RangeError(`Not a root: "${root}"`);
  if (bass !== undefined && !isNoteName(bass)) throw new RangeError(`Not a bass note: "${bass}"`);
  const known = qualityOf(quality);
  if (known === null) throw new RangeError(`Unknown chord quality: "${quality}"`);
  const rootClass = pitchClassOf(root);
  const bassClass = bass === undefined ? rootClass : pitchClassOf(bass);
  const tones = known.degrees.map((degree) => toneOf(root, degree));
  const slash = bass !== undefined && bassClass !== rootClass ? `/${bassNameIn(root, tones, bass)}` : '';
  return {
    roman,
    symbol: `${root}${known.name}${slash}`,
    root: rootClass,
    rootName: root,
    quality: known.name,
    bass: bassClass,
    tones,
  };
};

/** The spelled bass of a chord; its root where no other is written. */
export const bassNameOf = ({ symbol, rootName }: Chord): NoteName =>
  /\/([A-G][#b]*)$/.exec(symbol)?.[1] ?? rootName;

/**
 * The chord's tones and, of a slash chord, the bass it lacks, last: Bb, as b7, of C/Bb. The bass is no tone of the
 * chord, but what is played over it must agree with it.
 */
export const tonesWithBass = (chord: Chord): readonly ChordTone[] => {
  if (chord.tones.some(({ pitchClass }) => pitchClass === chord.bass)) return chord.tones;
  const name = bassNameOf(chord);
  return [...chord.tones, { degree: degreeBetween(chord.rootName, name), pitchClass: chord.bass, name }];
};

/** Reads a chord symbol as musicians write it (`Bb7`, `F#ø7`, `C△7/E`, `(G7♭9)`), or null when it is none. */
export const readSymbol = (symbol: string, roman = ''): Chord | null => {
  const parts = symbolParts(symbol);
  if (parts === null || qualityOf(parts.quality) === null) return null;
  const { root, quality, bass } = parts;
  return chordOf(bass === null ? { root, quality, roman } : { root, quality, bass, roman });
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
