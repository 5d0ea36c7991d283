import { METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import { readDecimal } from '../theory/decimal';
import { symbolOf } from './musicxml-chords';
import { sheetKey } from './musicxml-key';
import { withSectionKeys } from './section-keys';
import {
  barWords,
  type ImportedChart,
  MOST_MEASURES,
  meterFor,
  type PlacedSymbol,
  pickUpLine,
} from './sheet-bars';
import { childAt, childrenOf, numberAt, textAt, type XmlNode } from './xml-node';

/** What holds from measure to measure. */
interface Reading {
  divisions: number;
  beats: number;
  unit: number;
  /** The chart's meter: that of the first measure. */
  meter: MeterName | null;
  first: { readonly beats: number; readonly unit: number } | null;
  /** The chart's key: the first. */
  key: string | null;
  keyNow: string | null;
  tempo: number | null;
  sounding: boolean;
  readonly left: Set<string>;
}

/** A measure on its way to a line of text. */
interface Measure {
  /** Lines before it: the name of a section, a key. */
  readonly head: string[];
  readonly before: string[];
  readonly after: string[];
  readonly symbols: { at: number; symbol: string }[];
  at: number;
  length: number;
  opens: boolean;
  closes: string | null;
  ends: boolean;
}

/** A key as a chart's line writes it: `G`, `Dm`. */
const keyOf = (node: XmlNode): string | null => {
  const key = sheetKey(node);
  return key && key.tonic + (key.mode === 'minor' ? 'm' : '');
};

const takeAttributes = (reading: Reading, measure: Measure, node: XmlNode): void => {
  reading.divisions = numberAt(node, 'divisions') || reading.divisions;
  const beats = numberAt(node, 'time', 'beats');
  const unit = numberAt(node, 'time', 'beat-type');
  if (beats !== null && unit !== null && beats > 0 && unit > 0) {
    if (reading.first !== null && beats / unit !== reading.beats / reading.unit) {
      reading.left.add('The meter changes within the tune: every bar of the chart is as long as the first.');
    }
    reading.beats = beats;
    reading.unit = unit;
    reading.first ??= { beats, unit };
    reading.meter ??= meterFor(beats, unit);
  }
  const key = childrenOf(node, 'key').map(keyOf)[0] ?? null;
  if (key === null) return;
  reading.key ??= key;
  if (reading.keyNow !== null && key !== reading.keyNow) measure.head.push(`Key: ${key}`);
  reading.keyNow = key;
};

const takeSound = (reading: Reading, measure: Measure, sound: XmlNode, until: string): void => {
  const { attributes } = sound;
  const tempo = readDecimal(attributes.tempo ?? '');
  if (tempo !== null && tempo > 0) reading.tempo ??= tempo;
  if (attributes.segno !== undefined) measure.before.push('Segno');
  if (attributes.coda !== undefined) measure.before.push('Coda');
  if (attributes.tocoda !== undefined) measure.after.push('To Coda');
  if (attributes.fine !== undefined) measure.after.push('Fine');
  if (attributes.dacapo !== undefined) measure.after.push(`D.C.${until}`);
  if (attributes.dalsegno !== undefined) measure.after.push(`D.S.${until}`);
};

const takeDirection = (reading: Reading, measure: Measure, node: XmlNode, until: string): void => {
  for (const type of childrenOf(node, 'direction-type')) {
    const name = textAt(type, 'rehearsal').replace(/[[\]|]/g, '');
    if (name !== '') measure.head.push(`[${name}]`);
  }
  for (const sound of childrenOf(node, 'sound')) takeSound(reading, measure, sound, until);
};

const takeBarline = (measure: Measure, node: XmlNode): void => {
  const repeat = childAt(node, 'repeat')?.attributes;
  const ending = childAt(node, 'ending')?.attributes;
  if (ending?.type === 'start') {
    const numbers = (ending.number ?? '').replace(/\s/g, '');
    if (/^\d+(,\d+)*$/.test(numbers)) measure.before.push(`[${numbers}`);
  } else if (ending !== undefined) measure.ends = true;
  if (repeat?.direction === 'forward') measure.opens = true;
  if (repeat?.direction !== 'backward') return;
  const times = readDecimal(repeat.times ?? '') ?? 0;
  measure.closes = times > 2 ? `:| x${times}` : ':|';
};

const takeNode = (reading: Reading, measure: Measure, node: XmlNode, until: string): void => {
  const { divisions } = reading;
  const duration = (numberAt(node, 'duration') ?? 0) / (divisions * 4);
  if (node.name === 'attributes') takeAttributes(reading, measure, node);
  if (node.name === 'direction') takeDirection(reading, measure, node, until);
  if (node.name === 'sound') takeSound(reading, measure, node, until);
  if (node.name === 'barline') takeBarline(measure, node);
  if (node.name === 'harmony') {
    const symbol = symbolOf(node);
    const offset = (numberAt(node, 'offset') ?? 0) / (divisions * 4);
    if (symbol === null) reading.left.add('Chords written as functions were left out.');
    else measure.symbols.push({ at: Math.max(0, measure.at + offset), symbol });
  }
  if (node.name === 'backup') measure.at = Math.max(0, measure.at - duration);
  if (node.name === 'forward' || (node.name === 'note' && childrenOf(node, 'chord').length === 0)) {
    measure.at += duration;
  }
  measure.length = Math.max(measure.length, measure.at);
};

const wordsOf = (reading: Reading, { symbols, length }: Measure, meter: MeterName): string => {
  const full = Math.max(length, reading.beats / reading.unit);
  const placed = symbols.map(
    (each): PlacedSymbol => ({ at: Math.min(each.at / full, 0.999), symbol: each.symbol }),
  );
  const words = barWords(placed, meter, reading.left);
  const opens = !reading.sounding && words.startsWith('/');
  const empty = reading.sounding ? '/' : 'N.C.';
  reading.sounding ||= symbols.length > 0;
  if (words === '') return empty;
  return opens ? words.replace('/', 'N.C.') : words;
};

const BARS_A_LINE = 4;

const writeMeasure = (lines: string[], measure: Measure, words: string, isOpen: boolean): boolean => {
  const starts = measure.head.length > 0 || measure.opens || !isOpen;
  const text = [...measure.before, words, ...measure.after].join(' ');
  const end = measure.closes ?? (measure.ends ? '||' : '|');
  lines.push(...measure.head);
  if (starts) lines.push(`${measure.opens ? '|:' : '|'} ${text} ${end}`);
  else lines.push(`${lines.pop()} ${text} ${end}`);
  const bars = (lines.at(-1) ?? '').split(/\|+/).length - 2;
  return bars < BARS_A_LINE && measure.closes === null;
};

/** D.C. and D.S. go on to the coda where there is one, else to Fine where there is one. */
const untilOf = (part: XmlNode): string => {
  const says = (name: string): boolean =>
    part.children.some(({ children }) =>
      children.some((node) =>
        [node, ...childrenOf(node, 'sound')].some(({ attributes }) => attributes[name] !== undefined),
      ),
    );
  if (says('tocoda')) return ' al Coda';
  return says('fine') ? ' al Fine' : '';
};

const emptyMeasure = (): Measure => ({
  head: [],
  before: [],
  after: [],
  symbols: [],
  at: 0,
  length: 0,
  opens: false,
  closes: null,
  ends: false,
});

/** Shorter than this share of a bar, a first measure that is not counted is an upbeat. */
const UPBEAT = 0.99;

const takeUpbeat = (reading: Reading, lines: string[], { head, symbols, length }: Measure): void => {
  const meter = reading.meter ?? '4/4';
  const beat = reading.beats / reading.unit / METERS[meter].beats;
  const inBeats = symbols.map(({ at, symbol }) => ({ at: at / beat, symbol }));
  if (symbols.length === 0) reading.left.add('The upbeat was left out: the band counts in.');
  else lines.push(pickUpLine(inBeats, length / beat, meter));
  lines.push(...head);
};

const readPart = (part: XmlNode, reading: Reading): readonly string[] => {
  const until = untilOf(part);
  const lines: string[] = [];
  let isOpen = false;
  for (const node of childrenOf(part, 'measure').slice(0, MOST_MEASURES)) {
    const measure = emptyMeasure();
    for (const child of node.children) takeNode(reading, measure, child, until);
    const isUpbeat =
      lines.length === 0 &&
      node.attributes.implicit === 'yes' &&
      measure.length < (reading.beats / reading.unit) * UPBEAT;
    if (isUpbeat) takeUpbeat(reading, lines, measure);
    else isOpen = writeMeasure(lines, measure, wordsOf(reading, measure, reading.meter ?? '4/4'), isOpen);
  }
  return withSectionKeys(lines, reading.key);
};

const tempoLine = ({ tempo, first, meter }: Reading): readonly string[] => {
  if (tempo === null) return [];
  const { beats } = METERS[meter ?? '4/4'];
  const quarters = first === null ? 4 : (first.beats / first.unit) * 4;
  const beatsAMinute = Math.round((tempo * beats) / quarters);
  return beatsAMinute >= 20 && beatsAMinute <= 400 ? [`Tempo: ${beatsAMinute}`] : [];
};

/**
 * Reads the harmonies of a MusicXML score (version 4.0 and before, `score-partwise`) into text for a chart of one's
 * own: symbols at their places, repeats, endings, D.C. and D.S., rehearsal marks as sections, key, meter, tempo. The
 * first part that has any is read. A sentence where there is nothing to read. Never throws.
 */
export const readMusicXml = (root: XmlNode): ImportedChart | string => {
  if (root.name !== 'score-partwise') {
    return root.name === 'score-timewise'
      ? 'This score is written measure by measure (timewise); save it part by part (partwise) and open it again.'
      : 'This is no MusicXML score.';
  }
  const parts = childrenOf(root, 'part');
  const hasHarmony = (part: XmlNode): boolean =>
    childrenOf(part, 'measure').some((measure) => childrenOf(measure, 'harmony').length > 0);
  const part = parts.find(hasHarmony);
  if (part === undefined) return 'This score has no chord symbols, so there is nothing for a chart in it.';
  const reading: Reading = {
    divisions: 1,
    beats: 4,
    unit: 4,
    meter: null,
    first: null,
    key: null,
    keyNow: null,
    tempo: null,
    sounding: false,
    left: new Set<string>(),
  };
  const lines = readPart(part, reading);
  const title = textAt(root, 'work', 'work-title') || textAt(root, 'movement-title');
  if (parts.length > 1) reading.left.add('Only the part with the chord symbols was read.');
  return {
    name: title || 'Chart from a file',
    text: [
      ...(title === '' ? [] : [`Title: ${title}`]),
      ...(reading.key === null ? [] : [`Key: ${reading.key}`]),
      `Meter: ${reading.meter ?? '4/4'}`,
      ...tempoLine(reading),
      ...lines,
    ].join('\n'),
    left: [...reading.left],
  };
};
