import type { KeyMode } from '../theory/pitch';

/** A strain of a form. */
export interface FormSection {
  readonly name: string;
  readonly bars: number;
  /** The numeral of its key in the form's; missing where it is the same. */
  readonly key?: string;
}

/** A form: the bars of one chorus in Roman numerals. */
export interface Form {
  readonly name: string;
  /** One line in words for the player. */
  readonly description: string;
  readonly mode: KeyMode;
  /** Lines of bars; `|` parts bars, a space parts the chords of a bar. Plain numerals sound as sevenths. */
  readonly lines: readonly string[];
  /** Of a form of several strains, each with its bars; the numerals of one in another key are of that key. */
  readonly sections?: readonly FormSection[];
  /** Where the row is published; where accounts differ, which one stands here. */
  readonly source: string;
}

const WIKIPEDIA_TWELVE = 'Wikipedia, "Twelve-bar blues"';
const WIKIPEDIA_EIGHT = 'Wikipedia, "Eight-bar blues"';
const DUMMIES = '"Music Theory For Dummies", p. 152';

/** Every form offered. To add one, add a row here and its bars to the reference test of forms. */
const FORM_TABLE = {
  'early-twelve': {
    name: 'Twelve bars, early',
    description: 'The older form: the five chord stays for two bars, 9 and 10.',
    mode: 'major',
    lines: ['I | I | I | I', 'IV | IV | I | I', 'V | V | I | I'],
    source: WIKIPEDIA_TWELVE,
  },
  standard: {
    name: 'Twelve bars, standard',
    description: 'Three lines of four: one chord, four chord, five chord coming down through the four.',
    mode: 'major',
    lines: ['I | I | I | I', 'IV | IV | I | I', 'V | IV | I | I'],
    source: `Open Music Theory, "The blues progression"; ${WIKIPEDIA_TWELVE}`,
  },
  'quick-change': {
    name: 'Twelve bars, quick change',
    description: 'The standard form with the four chord already in bar 2.',
    mode: 'major',
    lines: ['I | IV | I | I', 'IV | IV | I | I', 'V | IV | I | I'],
    source: `${WIKIPEDIA_TWELVE}; Everything2, "Twelve bar blues" (bar 10 is V or IV by account; IV here)`,
  },
  'standard-turnaround': {
    name: 'Twelve bars with turnaround',
    description: 'The standard form with the five chord in bar 12, leading round again.',
    mode: 'major',
    lines: ['I | I | I | I', 'IV | IV | I | I', 'V | IV | I | V'],
    source: `${DUMMIES}; Everything2, "Twelve bar blues"`,
  },
  'quick-change-turnaround': {
    name: 'Twelve bars, quick change with turnaround',
    description: 'The four chord in bar 2 and the five chord in bar 12.',
    mode: 'major',
    lines: ['I7 | IV7 | I7 | I7', 'IV7 | IV7 | I7 | I7', 'V7 | IV7 | I7 | V7'],
    source: 'Everything2, "Twelve bar blues"',
  },
  'minor-a': {
    name: 'Minor twelve bars',
    description: 'Minor one and four chords; the five chord of bar 9 is a dominant and falls to the four.',
    mode: 'minor',
    lines: ['i | i | i | i', 'iv | iv | i | i', 'V | iv | i | i'],
    source: `${DUMMIES} (bar 12 is i or V; i here)`,
  },
  'minor-b': {
    name: 'Minor twelve bars with flat six',
    description: 'Minor chords, then the flat six falling to the five in bars 9 and 10.',
    mode: 'minor',
    lines: ['i | i | i | i', 'iv | iv | i | i', 'bVI7 | V7 | i | V7'],
    source:
      'Premier Guitar, "Essential blues progressions"; wholenote.com, "Minor Blues" (bar 2 is i or iv, bar 12 i or V7; i and V7 here)',
  },
  'jazz-swing': {
    name: 'Jazz twelve bars, swing',
    description: 'Two-five in bars 9 and 10, and a turnaround of two chords a bar.',
    mode: 'major',
    lines: ['I7 | IV7 | I7 | I7', 'IV7 | IV7 | I7 | I7', 'ii7 | V7 | I7 VI7 | ii7 V7'],
    source: 'Teaching sheet "Jazz blues progressions in all 12 keys"',
  },
  'jazz-bebop': {
    name: 'Jazz twelve bars, bebop',
    description: 'A two-five into the four chord, a diminished chord in bar 6 and a long turnaround.',
    mode: 'major',
    lines: ['I7 | IV7 | I7 | v7 I7', 'IV7 | #ivo7 | I7 | VI7b9', 'ii7 | V7 | iii7 VI7 | ii7 V7'],
    source: 'from memory; common practice, no source (bar 2 may add #ivo7, bar 11 may begin with I7)',
  },
  'eight-v-second': {
    name: 'Eight bars, five chord in bar 2',
    description: 'The five chord comes at once, the four chord answers for two bars.',
    mode: 'major',
    lines: ['I | V7 | IV7 | IV7', 'I | V7 | I | V7'],
    source: WIKIPEDIA_EIGHT,
  },
  'eight-half-bar': {
    name: 'Eight bars with a half-bar change',
    description: 'As before, with five and four chords sharing bar 6.',
    mode: 'major',
    lines: ['I | V7 | IV7 | IV7', 'I | V7 IV7 | I | V7'],
    source: WIKIPEDIA_EIGHT,
  },
  'eight-iv-third': {
    name: 'Eight bars, four chord in bar 3',
    description: 'Two bars each of one and four, then quick changes in every bar to the end.',
    mode: 'major',
    lines: ['I | I | IV | IV', 'I | V | I IV | I V'],
    source: WIKIPEDIA_EIGHT,
  },
  'eight-tonic-half': {
    name: 'Eight bars, tonic half',
    description: 'Four bars of the one chord, then four chord, five chord and home.',
    mode: 'major',
    lines: ['I | I | I | I', 'IV | IV | V | I'],
    source: WIKIPEDIA_EIGHT,
  },
  'eight-circle': {
    name: 'Eight bars with a circle of fifths',
    description: 'Six, two, five and one chords follow each other in bars 4 to 7.',
    mode: 'major',
    lines: ['I | IV | I | VI', 'ii | V | I | V'],
    source: `${DUMMIES} (first line read from a damaged scan)`,
  },
  'sixteen-a': {
    name: 'Sixteen bars, long first line',
    description: 'Eight bars of the one chord, then the rest of the twelve-bar form.',
    mode: 'major',
    lines: ['I | I | I | I', 'I | I | I | I', 'IV | IV | I | I', 'V | IV | I | I'],
    source: 'Open Music Theory, "The blues progression"',
  },
  'sixteen-b': {
    name: 'Sixteen bars, five and four repeated',
    description: 'The twelve-bar form with bars 9 and 10 played three times before home.',
    mode: 'major',
    lines: ['I | I | I | I', 'IV | IV | I | I', 'V | IV | V | IV', 'V | IV | I | I'],
    source: `Wikipedia, "Sixteen-bar blues"; ${DUMMIES}`,
  },
  'twenty-four': {
    name: 'Twenty-four bars',
    description: 'Every bar of the standard twelve played twice.',
    mode: 'major',
    lines: [
      'I | I | I | I',
      'I | I | I | I',
      'IV | IV | IV | IV',
      'I | I | I | I',
      'V | V | IV | IV',
      'I | I | I | I',
    ],
    source: 'common practice, no source',
  },
  strains: {
    name: 'Three strains, with a trio',
    description: 'A twelve-bar strain and one of sixteen, then a trio of thirty-two bars a fourth up.',
    mode: 'major',
    lines: [
      'Imaj | Imaj | Imaj | I7',
      'IV7 | IV7 | Imaj | Imaj',
      'V7 | V7 | Imaj | Imaj',
      'Imaj | Imaj | VI7 | VI7',
      'II7 | II7 | V7 | V7',
      'Imaj | Imaj | VI7 | VI7',
      'II7 | V7 | Imaj | Imaj',
      'Imaj | Imaj | Imaj | Imaj',
      'Imaj | Imaj | V7 | V7',
      'V7 | V7 | V7 | V7',
      'V7 | V7 | Imaj | Imaj',
      'Imaj | Imaj | Imaj | I7',
      'IVmaj | IVmaj | IVmaj | IVmaj',
      'IVmaj | #ivo7 | Imaj | VI7',
      'II7 | V7 | Imaj | Imaj',
    ],
    sections: [
      { name: 'A', bars: 12 },
      { name: 'B', bars: 16 },
      { name: 'Trio', bars: 32, key: 'IV' },
    ],
    source: 'from memory: lengths and keys of march and ragtime strains are common practice, no source',
  },
} as const satisfies Readonly<Record<string, Form>>;

export type FormId = keyof typeof FORM_TABLE;

/** Forms by id. */
export const FORMS: Readonly<Record<FormId, Form>> = FORM_TABLE;

/** True when a text names a built-in form. */
export const isFormId = (text: string): text is FormId => Object.hasOwn(FORM_TABLE, text);

/** Ids of all forms, twelve-bar forms first. */
export const FORM_IDS: readonly FormId[] = Object.keys(FORM_TABLE).filter(isFormId);

/** The bars of a form, each a list of numerals. */
export const formBars = (form: Form): readonly (readonly string[])[] =>
  form.lines.flatMap((line) => line.split('|').map((bar) => bar.trim().split(/\s+/)));
