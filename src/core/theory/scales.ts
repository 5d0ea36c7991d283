import type { Chord, ChordTone, Degree, NoteName } from './chord';
import { semitonesOf, toneOf } from './degrees';

/**
 * Scales as degrees above the tonic.
 * Blues and pentatonic rows: "Blues scale", Wikipedia (citing Harrison 2003 and others), and Simple English
 * Wikipedia "Blues scale" for the step pattern 3-2-1-1-3-2; modes: their definition as rotations of the major
 * scale; the last group: chord scales of jazz teaching (common practice, no source).
 */
const SCALE_TABLE = {
  'minor-blues': { name: 'minor blues', degrees: ['R', 'b3', '4', 'b5', '5', 'b7'] },
  'major-blues': { name: 'major blues', degrees: ['R', '2', 'b3', '3', '5', '6'] },
  'minor-pentatonic': { name: 'minor pentatonic', degrees: ['R', 'b3', '4', '5', 'b7'] },
  'major-pentatonic': { name: 'major pentatonic', degrees: ['R', '2', '3', '5', '6'] },
  ionian: { name: 'major (ionian)', degrees: ['R', '2', '3', '4', '5', '6', '7'] },
  dorian: { name: 'dorian', degrees: ['R', '2', 'b3', '4', '5', '6', 'b7'] },
  phrygian: { name: 'phrygian', degrees: ['R', 'b2', 'b3', '4', '5', 'b6', 'b7'] },
  lydian: { name: 'lydian', degrees: ['R', '2', '3', '#4', '5', '6', '7'] },
  mixolydian: { name: 'mixolydian', degrees: ['R', '2', '3', '4', '5', '6', 'b7'] },
  aeolian: { name: 'natural minor (aeolian)', degrees: ['R', '2', 'b3', '4', '5', 'b6', 'b7'] },
  locrian: { name: 'locrian', degrees: ['R', 'b2', 'b3', '4', 'b5', 'b6', 'b7'] },
  'harmonic-minor': { name: 'harmonic minor', degrees: ['R', '2', 'b3', '4', '5', 'b6', '7'] },
  'melodic-minor': { name: 'melodic minor', degrees: ['R', '2', 'b3', '4', '5', '6', '7'] },
  'lydian-dominant': { name: 'lydian dominant', degrees: ['R', '2', '3', '#4', '5', '6', 'b7'] },
  'phrygian-dominant': { name: 'phrygian dominant', degrees: ['R', 'b2', '3', '4', '5', 'b6', 'b7'] },
  'lydian-augmented': { name: 'lydian augmented', degrees: ['R', '2', '3', '#4', '#5', '6', '7'] },
  'mixolydian-flat-six': { name: 'mixolydian flat six', degrees: ['R', '2', '3', '4', '5', 'b6', 'b7'] },
  altered: { name: 'altered', degrees: ['R', 'b2', '#2', '3', 'b5', '#5', 'b7'] },
  'whole-tone': { name: 'whole tone', degrees: ['R', '2', '3', '#4', '#5', 'b7'] },
  'half-whole': {
    name: 'diminished, half step first',
    degrees: ['R', 'b2', '#2', '3', '#4', '5', '6', 'b7'],
  },
  'whole-half': {
    name: 'diminished, whole step first',
    degrees: ['R', '2', 'b3', '4', 'b5', 'b6', 'bb7', '7'],
  },
} as const satisfies Readonly<Record<string, { name: string; degrees: readonly Degree[] }>>;

export type ScaleId = keyof typeof SCALE_TABLE;

/** A scale on a spelled tonic. */
export interface Scale {
  readonly id: ScaleId;
  readonly name: string;
  readonly tonic: NoteName;
  /** Tonic first, upwards, without the octave. */
  readonly tones: readonly ChordTone[];
}

const isScaleId = (text: string): text is ScaleId => Object.hasOwn(SCALE_TABLE, text);

/** All scale ids, the blues scales first. */
export const SCALE_IDS: readonly ScaleId[] = Object.keys(SCALE_TABLE).filter(isScaleId);

/** A scale's name in words. */
export const scaleName = (id: ScaleId): string => SCALE_TABLE[id].name;

/** A scale on a tonic, spelled by letter. */
export const scaleOf = (id: ScaleId, tonic: NoteName): Scale => ({
  id,
  name: SCALE_TABLE[id].name,
  tonic,
  tones: SCALE_TABLE[id].degrees.map((degree) => toneOf(tonic, degree)),
});

/**
 * The blue notes of a key: its flattened third, fifth and seventh. The three pitch regions were measured in early
 * vocal recordings (Empirical Musicology Review 13, 2018, doi 10.18061/emr.v13i1-2.6316).
 */
export const blueNotes = (tonic: NoteName): readonly ChordTone[] =>
  ['b3', 'b5', 'b7'].map((degree) => toneOf(tonic, degree));

/** Which scale a chord suggests: the first that holds all its tones (common practice, no source). */
const CHORD_SCALE_ORDER: readonly ScaleId[] = [
  'mixolydian',
  'dorian',
  'ionian',
  'locrian',
  'lydian-dominant',
  'lydian',
  'phrygian-dominant',
  'mixolydian-flat-six',
  'melodic-minor',
  'whole-half',
  'aeolian',
  'harmonic-minor',
  'altered',
  'half-whole',
  'whole-tone',
  'lydian-augmented',
  'phrygian',
];

/** Plain major chords and major sevenths would also fit mixolydian or lydian; teaching gives them the major scale. */
const CHORD_SCALES: Readonly<Record<string, ScaleId>> = {
  '': 'ionian',
  '6': 'ionian',
  dim7: 'whole-half',
  dim: 'whole-half',
  aug: 'whole-tone',
  '7#5': 'whole-tone',
  '7b5': 'whole-tone',
  '7#5#9': 'altered',
};

const holds = (id: ScaleId, semitones: ReadonlySet<number>): boolean => {
  const own = new Set(SCALE_TABLE[id].degrees.map((degree) => semitonesOf(degree) % 12));
  return [...semitones].every((semitone) => own.has(semitone));
};

/** The scale usually taught for a chord, or null when none of the table holds all its tones. */
export const chordScale = (chord: Chord): Scale | null => {
  const semitones = new Set(chord.tones.map(({ degree }) => semitonesOf(degree) % 12));
  const id = CHORD_SCALES[chord.quality] ?? CHORD_SCALE_ORDER.find((each) => holds(each, semitones));
  return id === undefined ? null : scaleOf(id, chord.rootName);
};
