import { METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import { chartLines, wholeBar } from './abc-chart-lines';
import {
  type AbcKey,
  type AbcMeter,
  abcFraction,
  abcKey,
  abcMeter,
  abcTempo,
  firstTune,
  isCompound,
  usualLength,
  type Whole,
} from './abc-fields';
import { type AbcToken, musicTokens, symbolIn } from './abc-music';
import { withSectionKeys } from './section-keys';
import { type ImportedChart, meterFor } from './sheet-bars';

/** The longest file that is read, in UTF-16 units: many hundred tunes. */
export const LONGEST_ABC = 500_000;

/** What is gathered from a tune, line by line. */
interface Draft {
  title: string;
  key: AbcKey | null;
  meter: AbcMeter | null;
  unit: Whole | null;
  tempo: number | null;
  order: string | null;
  /** True once `K:` has ended the head. */
  inBody: boolean;
  /** The voice that is read: the first that is named. */
  voice: string | null;
  isOtherVoice: boolean;
  /** Tokens of the body, fields among them. */
  readonly body: AbcToken[];
  /** Where the notes of the music line before begin among them, for a line of symbols. */
  lineFrom: number;
  /** Lines of symbols laid under it. */
  laidUnder: number;
  readonly left: Set<string>;
}

/** A voice named: the head only declares them (§7.1). */
const voiceIn = (draft: Draft, value: string): void => {
  const name = value.trim().split(/\s+/)[0] ?? '';
  draft.voice ??= name;
  draft.isOtherVoice = draft.inBody && name !== draft.voice;
  if (draft.isOtherVoice) draft.left.add('Only the first voice was read.');
};

/** More lines of symbols under one line of music than any tune has are passed over. */
const MOST_LAID_UNDER = 8;

/** Symbols of an `s:` line go to the notes of the line of music before (§4.15): `*` passes a note, `|` goes to the next bar. */
const layUnder = (draft: Draft, value: string): void => {
  draft.laidUnder += 1;
  if (draft.laidUnder > MOST_LAID_UNDER) return;
  const line = draft.body.splice(draft.lineFrom);
  const marks = value.match(/"[^"]*"|\*|\||[^\s"*|]+/g) ?? [];
  const laid: AbcToken[] = [];
  for (const token of line) {
    if (token.kind === 'line') {
      while (marks.length > 0 && marks[0] !== '|') marks.shift();
      marks.shift();
    }
    if (token.kind === 'note' && !token.isRest && marks[0] !== '|') {
      const mark = marks.shift() ?? '*';
      const symbol = mark.startsWith('"') ? symbolIn(mark.slice(1, -1)) : null;
      if (symbol !== null) laid.push({ kind: 'symbol', symbol });
    }
    laid.push(token);
  }
  for (const token of laid) draft.body.push(token);
};

const headField = (draft: Draft, name: string, value: string): void => {
  if (name === 'T' && draft.title === '') draft.title = value.trim();
  if (name === 'M') draft.meter = abcMeter(value);
  if (name === 'L') draft.unit = abcFraction(value);
  if (name === 'Q') draft.tempo = abcTempo(value);
  if (name === 'P') draft.order = value.trim();
  if (name === 'V') voiceIn(draft, value);
  if (name !== 'K') return;
  draft.key = abcKey(value);
  draft.unit ??= usualLength(draft.meter);
  draft.inBody = true;
};

const bodyField = (draft: Draft, name: string, value: string): void => {
  if (name === 'V') voiceIn(draft, value);
  if (draft.isOtherVoice) return;
  if (name === 's') layUnder(draft, value);
  if (name === 'L') draft.unit = abcFraction(value) ?? draft.unit;
  if (['P', 'M', 'K', 'Q'].includes(name)) draft.body.push({ kind: 'field', name, value });
};

const takeLine = (draft: Draft, line: string): void => {
  const [, name, value = ''] = /^([A-Za-z+]):(?![|:])(.*)$/.exec(line) ?? [];
  if (name !== undefined) {
    if (draft.inBody) bodyField(draft, name, value);
    else headField(draft, name, value);
    return;
  }
  if (!draft.inBody) return;
  draft.lineFrom = draft.body.length;
  draft.laidUnder = 0;
  // One by one: a line may hold more than a call takes arguments.
  for (const token of musicTokens(line, draft.unit ?? 1 / 8, isCompound(draft.meter))) {
    if (token.kind === 'field' && token.name === 'V') voiceIn(draft, token.value);
    else if (!draft.isOtherVoice) draft.body.push(token);
    if (token.kind === 'field' && token.name === 'L') draft.unit = abcFraction(token.value) ?? draft.unit;
  }
};

const keyText = ({ tonic, mode }: AbcKey): string => `${tonic}${mode === 'minor' ? 'm' : ''}`;

const headLines = (
  { title, key, order }: Draft,
  meter: MeterName,
  tempo: number | null,
): readonly string[] => [
  ...(title === '' ? [] : [`Title: ${title}`]),
  ...(key === null ? [] : [`Key: ${keyText(key)}`]),
  `Meter: ${meter}`,
  ...(tempo === null ? [] : [`Tempo: ${tempo}`]),
  ...(order === null ? [] : [`Order: ${order}`]),
];

/** Beats a minute of the chart's meter, from quarters a minute of the tune's. */
const tempoOf = (quarters: number | null, meter: AbcMeter, chart: MeterName): number | null => {
  if (quarters === null) return null;
  const perBeat = (wholeBar(meter) / METERS[chart].beats) * 4;
  const tempo = Math.round(quarters / perBeat);
  return tempo >= 20 && tempo <= 400 ? tempo : null;
};

const COMMON: AbcMeter = { beats: 4, unit: 4 };

/**
 * Reads the chords of an ABC tune (standard 2.1 of 2011) into text for a chart of one's own: symbols in quotes and on
 * `s:` lines at their places, repeats, endings, parts with their order, keys, meter, tempo and title. Notes are only
 * counted, for the places. A sentence where there is nothing to read. Never throws on any text.
 */
export const readAbc = (source: string): ImportedChart | string => {
  if (source.length > LONGEST_ABC) return 'This file is longer than any tune; nothing of it was read.';
  const { lines, of } = firstTune(source);
  const draft: Draft = {
    title: '',
    key: null,
    meter: COMMON,
    unit: null,
    tempo: null,
    order: null,
    inBody: false,
    voice: null,
    isOtherVoice: false,
    body: [],
    lineFrom: 0,
    laidUnder: 0,
    left: new Set<string>(),
  };
  for (const line of lines) takeLine(draft, line);
  if (!draft.inBody) return 'This is no ABC tune: a line that begins with K: is missing.';
  if (!draft.body.some(({ kind }) => kind === 'symbol')) {
    return 'This tune has no chord symbols, so there is nothing for a chart in it.';
  }
  const meter = draft.meter ?? COMMON;
  const chartMeter = meterFor(meter.beats, meter.unit);
  const { beats, beatTicks } = METERS[chartMeter];
  if (draft.meter === null) {
    draft.left.add('It has no meter: each of its bars, however long, is written as one of 4/4.');
  }
  if (Math.abs(wholeBar(meter) - (beats * beatTicks) / 1920) > 1e-9) {
    draft.left.add(`Its meter, ${meter.beats}/${meter.unit}, is written as ${chartMeter}, bar for bar.`);
  }
  if (of > 1) draft.left.add(`The file holds ${of} tunes; the first was read.`);
  const tempo = tempoOf(draft.tempo, meter, chartMeter);
  const body = chartLines(draft.body, { meter: draft.meter, chartMeter, left: draft.left });
  return {
    name: draft.title || 'Chart from a file',
    text: [
      ...headLines(draft, chartMeter, tempo),
      ...withSectionKeys(body, draft.key && keyText(draft.key)),
    ].join('\n'),
    left: [...draft.left],
  };
};
