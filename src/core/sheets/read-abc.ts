import { METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import {
  type AbcKey,
  type AbcMeter,
  abcFraction,
  abcKey,
  abcMeter,
  abcTempo,
  firstTune,
  usualLength,
  type Whole,
} from './abc-fields';
import { type AbcToken, musicTokens } from './abc-music';
import {
  barWords,
  type ImportedChart,
  MOST_MEASURES,
  meterFor,
  type PlacedSymbol,
  pickUpLine,
} from './sheet-bars';

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

const voiceIn = (draft: Draft, value: string): void => {
  const name = value.trim().split(/\s+/)[0] ?? '';
  draft.voice ??= name;
  draft.isOtherVoice = name !== draft.voice;
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
      const symbol = mark.startsWith('"') ? mark.slice(1, -1) : '';
      if (symbol !== '' && !/^[\^_<>@]/.test(symbol)) laid.push({ kind: 'symbol', symbol });
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
  if (!draft.inBody || draft.isOtherVoice) return;
  draft.lineFrom = draft.body.length;
  draft.laidUnder = 0;
  // One by one: a line may hold more than a call takes arguments.
  for (const token of musicTokens(line, draft.unit ?? 1 / 8)) draft.body.push(token);
};

/** What is written so far of a chart's text. */
interface Page {
  readonly lines: string[];
  line: string;
  bars: number;
  /** Bars written in all. */
  written: number;
  /** What has come of the bar being read: its length so far and its symbols, in whole notes. */
  at: Whole;
  symbols: { at: Whole; symbol: string }[];
  sounding: boolean;
  meter: AbcMeter;
  readonly chartMeter: MeterName;
  readonly left: Set<string>;
}

const wholeBar = ({ beats, unit }: AbcMeter): Whole => beats / unit;

/** Ends the line being written; bars behind it begin a new one. */
const breakLine = (page: Page, next?: string): void => {
  const line = page.line.trim();
  if (line !== '') page.lines.push(line.startsWith('|') ? line : `| ${line}`);
  page.line = '';
  page.bars = 0;
  if (next !== undefined) page.lines.push(next);
};

const BARS_A_LINE = 4;

/** Shorter than this share of a bar, the first bar is an upbeat. */
const UPBEAT = 0.99;

/** Writes the bar that ends; an upbeat becomes a line of its own, or is left out where it has no chord. */
const writeBar = (page: Page, isFirst: boolean): void => {
  const { at: length, symbols } = page;
  page.at = 0;
  page.symbols = [];
  if (length === 0 && symbols.length === 0) return;
  const whole = wholeBar(page.meter);
  if (isFirst && length < whole * UPBEAT) {
    const beat = whole / METERS[page.chartMeter].beats;
    const inBeats = symbols.map(({ at, symbol }) => ({ at: at / beat, symbol }));
    if (symbols.length > 0) page.lines.unshift(pickUpLine(inBeats, length / beat, page.chartMeter));
    else page.left.add('The upbeat was left out: the band counts in.');
    return;
  }
  const full = Math.max(length, whole);
  const placed = symbols.map((each): PlacedSymbol => ({ at: each.at / full, symbol: each.symbol }));
  const rest = page.sounding ? '/' : 'N.C.';
  const words = barWords(placed, page.chartMeter);
  const opens = !page.sounding && (placed[0]?.at ?? 1) > 0 && words !== '';
  page.sounding ||= placed.length > 0;
  page.line += ` ${words === '' ? rest : opens ? words.replace(/^\//, 'N.C.') : words}`;
  page.bars += 1;
  page.written += 1;
};

const lineText = ({ closes, opens, double }: AbcToken & { kind: 'line' }): string => {
  const close = closes > 0 ? ` :|${closes > 1 ? ` x${closes + 1}` : ''}` : double ? ' ||' : ' |';
  return opens > 0 ? `${closes > 0 ? close : ''} |:` : close;
};

const takeField = (page: Page, name: string, value: string): void => {
  if (name === 'P') breakLine(page, `[${value.trim().replace(/[[\]|]/g, '')}]`);
  const key = name === 'K' ? abcKey(value) : null;
  if (key !== null) breakLine(page, `Key: ${key.tonic}${key.mode === 'minor' ? 'm' : ''}`);
  const meter = name === 'M' ? abcMeter(value) : null;
  if (meter === null) return;
  if (wholeBar(meter) !== wholeBar(page.meter)) {
    page.left.add('The meter changes within the tune: every bar of the chart is as long as the first.');
  }
  page.meter = meter;
};

const takeToken = (page: Page, token: AbcToken, isFirst: () => boolean): void => {
  if (token.kind === 'note') page.at += token.length;
  if (token.kind === 'symbol') page.symbols.push({ at: page.at, symbol: token.symbol });
  if (token.kind === 'bars rest') {
    for (let i = 0; i < Math.min(token.bars, 64); i += 1) {
      page.at = wholeBar(page.meter);
      writeBar(page, false);
      if (i < token.bars - 1) page.line += ' |';
    }
  }
  if (token.kind === 'ending') page.line += ` [${token.numbers}`;
  if (token.kind === 'field') takeField(page, token.name, token.value);
  if (token.kind !== 'line') return;
  writeBar(page, isFirst());
  const text = lineText(token);
  if (token.opens > 0 && token.closes === 0 && page.line.trim() !== '') breakLine(page);
  page.line += text;
  if (page.bars >= BARS_A_LINE) breakLine(page);
};

const headLines = (
  { title, key, order }: Draft,
  meter: MeterName,
  tempo: number | null,
): readonly string[] => [
  ...(title === '' ? [] : [`Title: ${title}`]),
  ...(key === null ? [] : [`Key: ${key.tonic}${key.mode === 'minor' ? 'm' : ''}`]),
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

const bodyLines = ({ body, left }: Draft, meter: AbcMeter, chartMeter: MeterName): readonly string[] => {
  const page: Page = {
    lines: [],
    line: '',
    bars: 0,
    written: 0,
    at: 0,
    symbols: [],
    sounding: false,
    meter,
    chartMeter,
    left,
  };
  let lines = 0;
  for (const token of body) {
    if (page.written >= MOST_MEASURES) break;
    takeToken(page, token, () => lines === 0 && page.bars === 0);
    if (token.kind === 'line') lines += 1;
  }
  writeBar(page, false);
  breakLine(page);
  return page.lines;
};

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
  if (Math.abs(wholeBar(meter) - (beats * beatTicks) / 1920) > 1e-9) {
    draft.left.add(`Its meter, ${meter.beats}/${meter.unit}, is written as ${chartMeter}, bar for bar.`);
  }
  if (of > 1) draft.left.add(`The file holds ${of} tunes; the first was read.`);
  const tempo = tempoOf(draft.tempo, meter, chartMeter);
  const body = bodyLines(draft, meter, chartMeter);
  return {
    name: draft.title || 'Chart from a file',
    text: [...headLines(draft, chartMeter, tempo), ...body].join('\n'),
    left: [...draft.left],
  };
};
