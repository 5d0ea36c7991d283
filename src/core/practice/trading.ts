import type { Bar, Chart } from '../chart/chart';
import type { Harp } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import type { LineTaste } from '../lines/line-cost';
import { onHarp, type Phrase } from '../phrase/phrase';
import { phraseLead } from '../phrase/phrase-lead';
import type { NoteEvent } from '../score/score';
import { seedFrom } from '../theory/random';
import { asTicks } from '../theory/units';
import { makeCall } from './call';

/** Who plays. */
export type Turn = 'listen' | 'answer';

/** What the player reads, large. */
export const TURN_WORDS: Readonly<Record<Turn, string>> = { listen: 'Listen', answer: 'Your turn' };

/** What to trade over. */
export interface TradingSpec {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly taste: LineTaste;
  /** Gives each chorus its own calls; use another for each. */
  readonly seed: number;
  /** Long : short of off-beats, as the band plays them. */
  readonly swing: number;
  /** Calls to use in turn, such as ones typed by a teacher; without any they are made up. */
  readonly phrases?: readonly Phrase[];
}

/** A call at its place. */
export interface Call {
  /** Index of its first bar. */
  readonly bar: number;
  /** How many bars it has. */
  readonly bars: number;
  readonly phrase: Phrase;
  /** True when a given phrase was longer than its room and lost its end. */
  readonly cut: boolean;
  /** Ids of sounds the harp in hand does not have. */
  readonly missing: readonly string[];
}

/** One chorus of call and answer. */
export interface Trading {
  /** turns[i] says who plays in bar i. */
  readonly turns: readonly Turn[];
  readonly calls: readonly Call[];
  /** The calls as the harp voice plays them, from the chart's start. */
  readonly lead: readonly NoteEvent[];
}

/**
 * Two bars of call, two of answer in every line of four (Open Music Theory, "Blues Melodies and the Blues Scale").
 * A shorter last line is shared alike, the answer taking the odd bar; one bar alone is the player's.
 */
const BARS_A_LINE = 4;
const CALL_BARS = 2;

interface Room {
  readonly bar: number;
  readonly bars: number;
  /** Bars the call may take, one always left for the answer. */
  readonly most: number;
}

const roomsOf = (chart: Chart): readonly Room[] => {
  const lines = Math.ceil(chart.bars.length / BARS_A_LINE);
  return Array.from({ length: lines }, (_, line) => {
    const bar = line * BARS_A_LINE;
    const length = Math.min(BARS_A_LINE, chart.bars.length - bar);
    return { bar, bars: Math.min(CALL_BARS, Math.floor(length / 2)), most: length - 1 };
  }).filter(({ bars }) => bars > 0);
};

/** A given phrase in its room: as many bars as it needs, what is too long cut off. */
const fitPhrase = (phrase: Phrase, room: Room, bar: Bar): Omit<Call, 'missing'> => {
  const wanted = Math.ceil(phrase.length / bar.length);
  const bars = Math.max(room.bars, Math.min(wanted, room.most));
  const length = bars * bar.length;
  const notes = phrase.notes
    .filter(({ at }) => at < length)
    .map((note) => ({ ...note, length: asTicks(Math.min(note.length, length - note.at)) }));
  const fitted = { ...phrase, length: asTicks(length), notes };
  return { bar: room.bar, bars, phrase: fitted, cut: phrase.length > length };
};

const callFor = (spec: TradingSpec, room: Room, index: number): Omit<Call, 'missing'> => {
  const { chart, phrases = [], seed } = spec;
  const given = phrases[index % Math.max(1, phrases.length)];
  const bars = chart.bars.slice(room.bar, room.bar + room.bars);
  const [first] = bars;
  if (given !== undefined && first !== undefined) return fitPhrase(given, room, first);
  const phrase = makeCall({ ...spec, bars, meter: chart.meter, seed: seedFrom(seed, room.bar) });
  return { bar: room.bar, bars: room.bars, phrase, cut: false };
};

/** Lays one chorus out as call and answer: who plays when, the calls, and the notes of the harp voice. */
export const tradeOver = (spec: TradingSpec): Trading => {
  const { chart, harp, swing } = spec;
  const calls = roomsOf(chart).map((room, i): Call => {
    const call = callFor(spec, room, i);
    return { ...call, missing: onHarp(call.phrase, harp).missing };
  });
  const listens = new Set(calls.flatMap(({ bar, bars }) => Array.from({ length: bars }, (_, i) => bar + i)));
  return {
    turns: chart.bars.map((_, i) => (listens.has(i) ? 'listen' : 'answer')),
    calls,
    lead: calls.flatMap(({ bar, phrase }) =>
      phraseLead(phrase, { harp, at: chart.bars[bar]?.at ?? asTicks(0), swing }),
    ),
  };
};
