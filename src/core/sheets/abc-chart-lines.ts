import { METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import { type AbcMeter, abcKey, abcMeter, type Whole } from './abc-fields';
import type { AbcToken, RoadSign } from './abc-music';
import { barWords, MOST_MEASURES, type PlacedSymbol, pickUpLine } from './sheet-bars';

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
  /** Signs of the road that stand before the bar being read and behind it. */
  before: string[];
  after: string[];
  /** Where D.C. and D.S. lead in the end: ` al Coda`, ` al Fine` or nowhere. */
  readonly until: string;
  /** Null where the music is free: its bars are as long as they are, and none is an upbeat (§3.1.6, 4.8). */
  meter: AbcMeter | null;
  /** True once the first bar is over, the upbeat among them. */
  begun: boolean;
  /** What the bar before lacked, in whole notes; an upbeat within the tune makes up for it. */
  lacking: Whole;
  readonly chartMeter: MeterName;
  readonly left: Set<string>;
}

/** How long a bar of a meter is. */
export const wholeBar = ({ beats, unit }: AbcMeter): Whole => beats / unit;

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

/** An upbeat becomes a line of its own, or is left out where it has no chord. */
const writeUpbeat = (page: Page, length: Whole, symbols: Page['symbols']): void => {
  const beat = (page.meter === null ? 1 : wholeBar(page.meter)) / METERS[page.chartMeter].beats;
  const inBeats = symbols.map(({ at, symbol }) => ({ at: at / beat, symbol }));
  if (symbols.length > 0) page.lines.unshift(pickUpLine(inBeats, length / beat, page.chartMeter));
  else page.left.add('The upbeat was left out: the band counts in.');
};

/** Whether a bar is the other part of the bar before it: the upbeat of a section, behind its double or repeat line. */
const makesUp = (page: Page, length: Whole, whole: Whole): boolean =>
  page.symbols.length === 0 && length < whole * UPBEAT && length <= page.lacking / UPBEAT;

/** Writes the bar that ends. */
const writeBar = (page: Page): void => {
  const { at: length, symbols, begun } = page;
  const whole = page.meter === null ? length : wholeBar(page.meter);
  const isOver = length === 0 && symbols.length === 0;
  const made = begun && makesUp(page, length, whole);
  page.at = 0;
  page.symbols = [];
  if (isOver) return;
  page.begun = true;
  page.lacking = made ? 0 : Math.max(0, whole - length);
  if (made) return;
  if (!begun && length < whole * UPBEAT) {
    page.lacking = 0;
    writeUpbeat(page, length, symbols);
    return;
  }
  const full = Math.max(length, whole) || 1;
  const placed = symbols.map((each): PlacedSymbol => ({ at: each.at / full, symbol: each.symbol }));
  const rest = page.sounding ? '/' : 'N.C.';
  const words = barWords(placed, page.chartMeter, page.left);
  const opens = !page.sounding && (placed[0]?.at ?? 1) > 0 && words !== '';
  page.sounding ||= placed.length > 0;
  const sounding = words === '' ? rest : opens ? words.replace(/^\//, 'N.C.') : words;
  page.line += ` ${[...page.before, sounding, ...page.after].join(' ')}`;
  page.before = [];
  page.after = [];
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
  if (page.meter !== null && wholeBar(meter) !== wholeBar(page.meter)) {
    page.left.add('The meter changes within the tune: every bar of the chart is as long as the first.');
  }
  page.meter = meter;
};

/** A sign of the road goes with the bar it stands in, D.C. and the like behind it; between bars where it stands. */
const takeRoad = (page: Page, sign: RoadSign): void => {
  if (sign === 'Segno' || sign === 'Coda') page.before.push(sign);
  else {
    const word = sign === 'D.C.' || sign === 'D.S.' ? sign + page.until : sign;
    if (page.at > 0 || page.symbols.length > 0 || page.bars === 0) page.after.push(word);
    else page.line += ` ${word}`;
  }
};

/** A dotted line within a bar parts it for the eye alone. */
const isForTheEye = ({ at, meter }: Page, { dotted }: AbcToken & { kind: 'line' }): boolean =>
  dotted && (meter === null || at < wholeBar(meter) * UPBEAT);

const takeToken = (page: Page, token: AbcToken): void => {
  if (token.kind === 'note') page.at += token.length;
  if (token.kind === 'symbol') page.symbols.push({ at: page.at, symbol: token.symbol });
  if (token.kind === 'bars rest') {
    for (let i = 0; i < Math.min(token.bars, 64); i += 1) {
      page.at = page.meter === null ? 1 : wholeBar(page.meter);
      writeBar(page);
      if (i < token.bars - 1) page.line += ' |';
    }
  }
  if (token.kind === 'road') takeRoad(page, token.sign);
  if (token.kind === 'ending') page.line += ` [${token.numbers}`;
  if (token.kind === 'field') takeField(page, token.name, token.value);
  if (token.kind !== 'line' || isForTheEye(page, token)) return;
  writeBar(page);
  const text = lineText(token);
  if (token.opens > 0 && token.closes === 0 && page.line.trim() !== '') breakLine(page);
  // An upbeat leaves nothing between the line before it and its own.
  if (text !== ' |' || !/[|:]$/.test(page.line)) page.line += text;
  if (page.bars >= BARS_A_LINE) breakLine(page);
};

/** D.C. and D.S. go on to the coda where the tune leads to one, else to Fine where there is one. */
const untilOf = (body: readonly AbcToken[]): string => {
  const says = (sign: RoadSign): boolean =>
    body.some((token) => token.kind === 'road' && token.sign === sign);
  if (says('To Coda')) return ' al Coda';
  return says('Fine') ? ' al Fine' : '';
};

/** The meter of a tune, what is written for it, and where to say what is left out. */
type Sheet = Pick<Page, 'meter' | 'chartMeter' | 'left'>;

/** The music of a tune as lines of a typed chart. */
export const chartLines = (body: readonly AbcToken[], sheet: Sheet): readonly string[] => {
  const page: Page = {
    ...{ lines: [], line: '', bars: 0, written: 0, at: 0, symbols: [], sounding: false },
    ...{ begun: false, lacking: 0 },
    ...{ before: [], after: [], until: untilOf(body) },
    ...sheet,
  };
  for (const token of body) {
    if (page.written >= MOST_MEASURES) break;
    takeToken(page, token);
  }
  writeBar(page);
  breakLine(page);
  return page.lines;
};
