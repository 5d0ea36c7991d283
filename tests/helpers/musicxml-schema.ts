/**
 * The part of the MusicXML 4.0 schema (W3C, `musicxml.xsd`, 2021) that a lead sheet uses, typed in by hand:
 * children in the order the schema demands, with how many of each, required attributes, and permitted values.
 * Kind names, swing and the layout of `harmony` were read in the schema; the rest is from memory of it.
 */
export interface ParsedElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly ParsedElement[];
  readonly text: string;
}

type Count = '1' | '?' | '*' | '+';

interface Model {
  /** Children in order; `any` order where the schema has a repeated choice. */
  readonly order: 'sequence' | 'any';
  readonly children: readonly (readonly [name: string, count: Count])[];
  readonly attributes?: Readonly<Record<string, RegExp>>;
  readonly optional?: Readonly<Record<string, RegExp>>;
}

const sequence = (children: string, more: Partial<Model> = {}): Model => ({
  order: 'sequence',
  children: children
    .split(' ')
    .filter(Boolean)
    .map((word) => {
      const [, name = word, count = ''] = /^(.*?)([?*+]?)$/.exec(word) ?? [];
      return [name, count === '?' || count === '*' || count === '+' ? count : '1'];
    }),
  ...more,
});

const anyOrder = (children: string, more: Partial<Model> = {}): Model => ({
  ...sequence(children, more),
  order: 'any',
});

const YES_NO = /^(yes|no)$/;
const PLACEMENT = /^(above|below)$/;
const ID = /^[A-Za-z_][\w.-]*$/;

const MODELS: Readonly<Record<string, Model>> = {
  'score-partwise': sequence(
    'work? movement-number? movement-title? identification? defaults? credit* part-list part+',
    { attributes: { version: /^4\.0$/ } },
  ),
  work: sequence('work-number? work-title? opus?'),
  identification: sequence('creator* rights* encoding? source? relation* miscellaneous?'),
  encoding: anyOrder('encoding-date* encoder* software* encoding-description* supports*'),
  'part-list': sequence('part-group* score-part+'),
  'score-part': sequence(
    'identification? part-name part-name-display? part-abbreviation? group* score-instrument* player* midi-device* midi-instrument*',
    { attributes: { id: ID } },
  ),
  'score-instrument': sequence(
    'instrument-name instrument-abbreviation? instrument-sound? solo? ensemble? virtual-instrument?',
    { attributes: { id: ID } },
  ),
  'midi-instrument': sequence(
    'midi-channel? midi-name? midi-bank? midi-program? midi-unpitched? volume? pan? elevation?',
    { attributes: { id: ID } },
  ),
  part: sequence('measure+', { attributes: { id: ID } }),
  measure: anyOrder('print* attributes* direction* harmony* note* backup* forward* barline*', {
    attributes: { number: /^.+$/ },
    optional: { implicit: YES_NO },
  }),
  print: sequence('page-layout? system-layout? staff-layout* measure-layout?', {
    optional: { 'new-system': YES_NO },
  }),
  attributes: sequence(
    'footnote? level? divisions? key* time* staves? part-symbol? instruments? clef* staff-details* transpose* directive* measure-style*',
  ),
  key: sequence('cancel? fifths mode?'),
  time: sequence('beats beat-type'),
  clef: sequence('sign line? clef-octave-change?'),
  'measure-style': sequence('slash'),
  slash: sequence('slash-type? slash-dot* except-voice*', {
    attributes: { type: /^(start|stop)$/ },
    optional: { 'use-stems': YES_NO },
  }),
  direction: sequence('direction-type+ offset? footnote? level? voice? staff? sound? listening?', {
    optional: { placement: PLACEMENT },
  }),
  'direction-type': anyOrder('words* metronome? rehearsal*'),
  rehearsal: sequence(''),
  metronome: sequence('beat-unit beat-unit-dot* per-minute'),
  'beat-unit-dot': sequence(''),
  sound: sequence('swing? offset?', { optional: { tempo: /^\d+(\.\d+)?$/ } }),
  swing: sequence('first second swing-type?'),
  harmony: sequence('root kind inversion? bass? degree* frame? offset? footnote? level? staff?'),
  root: sequence('root-step root-alter?'),
  bass: sequence('bass-separator? bass-step bass-alter?'),
  degree: sequence('degree-value degree-alter degree-type', { optional: { 'print-object': YES_NO } }),
  note: sequence(
    'rest duration tie* instrument* footnote? level? voice? type? dot* accidental? staff? lyric*',
  ),
  rest: sequence('display-step? display-octave?', { optional: { measure: YES_NO } }),
  dot: sequence(''),
  barline: sequence('bar-style? footnote? level? ending? repeat?', {
    optional: { location: /^(right|left|middle)$/ },
  }),
};

const KIND =
  'major minor augmented diminished dominant major-seventh minor-seventh diminished-seventh augmented-seventh half-diminished major-minor major-sixth minor-sixth dominant-ninth major-ninth minor-ninth dominant-11th major-11th minor-11th dominant-13th major-13th minor-13th suspended-second suspended-fourth Neapolitan Italian French German pedal power Tristan other none';
const oneOf = (names: string): RegExp => new RegExp(`^(${names.split(' ').join('|')})$`);
const POSITIVE = /^[1-9]\d*$/;
const STEP = /^[A-G]$/;
const ALTER = /^-?\d+(\.\d+)?$/;

/** Elements that hold text, and what it may be. */
const TEXTS: Readonly<Record<string, RegExp>> = {
  'bar-style': /^light-heavy$/,
  'bass-alter': ALTER,
  'bass-step': STEP,
  'beat-type': POSITIVE,
  'beat-unit': oneOf('half quarter eighth 16th'),
  beats: POSITIVE,
  'degree-alter': ALTER,
  'degree-type': oneOf('add alter subtract'),
  'degree-value': POSITIVE,
  divisions: POSITIVE,
  duration: POSITIVE,
  fifths: /^-?\d+$/,
  first: POSITIVE,
  'instrument-name': /^.+$/,
  'instrument-sound': /^[a-z]+(\.[a-z-]+)*$/,
  kind: oneOf(KIND),
  line: /^\d$/,
  'midi-channel': /^([1-9]|1[0-6])$/,
  'midi-program': /^([1-9]|[1-9]\d|1[01]\d|12[0-8])$/,
  mode: oneOf('major minor dorian phrygian lydian mixolydian aeolian ionian locrian none'),
  offset: ALTER,
  'part-name': /^.+$/,
  'per-minute': /^\d+(\.\d+)?$/,
  rehearsal: /^.+$/,
  'root-alter': ALTER,
  'root-step': STEP,
  second: POSITIVE,
  sign: oneOf('G F C percussion TAB jianpu none'),
  software: /^.+$/,
  'swing-type': oneOf('16th eighth'),
  type: oneOf('whole half quarter eighth 16th 32nd'),
  voice: /^.+$/,
  words: /^.*$/s,
  'work-title': /^.*$/s,
};
const TEXT_ATTRIBUTES: Readonly<Record<string, readonly string[]>> = {
  kind: ['text'],
  'root-step': ['text'],
};

const childProblems = (element: ParsedElement, model: Model): readonly string[] => {
  const names = model.children.map(([name]) => name);
  const problems = element.children
    .filter((child) => !names.includes(child.name))
    .map((child) => `${child.name} may not stand in ${element.name}`);
  for (const [name, count] of model.children) {
    const found = element.children.filter((child) => child.name === name).length;
    if (found === 0 && (count === '1' || count === '+')) problems.push(`${element.name} needs ${name}`);
    if (found > 1 && (count === '1' || count === '?'))
      problems.push(`${element.name} holds ${name} ${found} times`);
  }
  const places = element.children.map((child) => names.indexOf(child.name)).filter((place) => place >= 0);
  const late = places.findIndex((place, i) => place < (places[i - 1] ?? 0));
  if (model.order === 'sequence' && late > 0) {
    problems.push(`${names[places[late] ?? 0]} comes too late in ${element.name}`);
  }
  return problems;
};

const attributeProblems = ({ name, attributes }: ParsedElement, model: Model): readonly string[] => {
  const required = Object.entries(model.attributes ?? {});
  const rules = new Map([...required, ...Object.entries(model.optional ?? {})]);
  return [
    ...required.filter(([key]) => !(key in attributes)).map(([key]) => `${name} needs the attribute ${key}`),
    ...Object.entries(attributes)
      .filter(([key, value]) => !rules.get(key)?.test(value))
      .map(([key, value]) => `${name} may not have ${key}="${value}"`),
  ];
};

const textProblems = (
  { name, attributes, children, text }: ParsedElement,
  rule: RegExp,
): readonly string[] => [
  ...children.map((child) => `${child.name} may not stand in ${name}`),
  ...(rule.test(text) ? [] : [`${name} may not be "${text}"`]),
  ...Object.keys(attributes)
    .filter((key) => !TEXT_ATTRIBUTES[name]?.includes(key))
    .map((key) => `${name} may not have ${key}`),
];

/** Everything in which an element and what it holds break the schema, one sentence each. */
export const schemaProblems = (element: ParsedElement): readonly string[] => {
  const text = TEXTS[element.name];
  if (text) return textProblems(element, text);
  const model = MODELS[element.name];
  if (!model) return [`${element.name} is not in the table`];
  return [
    ...childProblems(element, model),
    ...attributeProblems(element, model),
    ...(element.text.trim() === '' ? [] : [`${element.name} may not hold text`]),
    ...element.children.flatMap(schemaProblems),
  ];
};
