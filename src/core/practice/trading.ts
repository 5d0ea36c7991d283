import type { Bar, Chart } from '../chart/chart';
import type { Harp } from '../harp/harp';
import type { TechniqueChoice } from '../harp/reach';
import type { LineTaste } from '../lines/line-tastes';
import { onHarp, type Phrase } from '../phrase/phrase';
import { phraseLead } from '../phrase/phrase-lead';
import type { NoteEvent } from '../score/score';
import { seedFrom } from '../theory/random';
import { asMidi, asTicks } from '../theory/units';
import type { MadeCall } from './call';
import type { CallLevel } from './call-levels';
import { chorusCalls } from './chorus-calls';
import type { AnswerVoice, TradeMode, Turn } from './trade-modes';
import { readPlan, roomsOver, type TradeRoom } from './trade-plan';
import type { TradeRun } from './trade-run';

/** What to trade over. */
export interface TradingSpec {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly taste: LineTaste;
  /** Of the take: each chorus has calls of its own. */
  readonly seed: number;
  /** Long : short of off-beats, as the band plays them. */
  readonly swing: number;
  /** From 0. */
  readonly chorus: number;
  readonly level: CallLevel;
  readonly mode: TradeMode;
  /** As `readPlan` reads it. */
  readonly plan: string;
  /** Calls to use in turn, such as ones typed by a teacher; without any they are made up. */
  readonly phrases?: readonly Phrase[];
  /** Who answers where the player leads; the harp voice where it is left out. */
  readonly voice?: AnswerVoice;
  /** What came of the turns so far. */
  readonly run: TradeRun;
}

/** A call at its place. */
export interface Call {
  /** Which turn of the trading it is, counted over all choruses from 0. */
  readonly turn: number;
  /** Index of its first bar. */
  readonly bar: number;
  /** How many bars it has. */
  readonly bars: number;
  /** Index of the first bar of its answer, and how many those are; it may lie in the next chorus. */
  readonly answer: { readonly bar: number; readonly bars: number };
  readonly phrase: Phrase;
  /** True when a given phrase was longer than its room and lost its end. */
  readonly cut: boolean;
  /** Ids of sounds the harp in hand does not have. */
  readonly missing: readonly string[];
}

/** One chorus of call and answer. */
export interface Trading {
  readonly mode: TradeMode;
  /** turns[i] says who plays in bar i. */
  readonly turns: readonly Turn[];
  readonly calls: readonly Call[];
  /** The calls as the harp voice plays them, from the chart's start; answers of the piano are the chord player's. */
  readonly lead: readonly NoteEvent[];
}

/** A given phrase in its room: as many bars as it needs, one always left for the answer, what is too long cut off. */
const fitPhrase = (
  phrase: Phrase,
  room: TradeRoom,
  bar: Bar,
): Pick<Call, 'bar' | 'bars' | 'phrase' | 'cut'> => {
  const wanted = Math.ceil(phrase.length / bar.length);
  const bars = Math.max(room.bars, Math.min(wanted, room.bars + room.answer - 1));
  const length = bars * bar.length;
  const notes = phrase.notes
    .filter(({ at }) => at < length)
    .map((note) => ({ ...note, length: asTicks(Math.min(note.length, length - note.at)) }));
  const fitted = { ...phrase, length: asTicks(length), notes };
  return { bar: room.bar, bars, phrase: fitted, cut: phrase.length > length };
};

/** Which call a turn has: a call that is repeated pushes the others back. */
const callNumber = (turn: number, { repeats }: TradeRun): number =>
  turn - repeats.filter((after) => after < turn).length;

/** The turn in which the call of a turn was heard first: that is what it was made for. */
const firstTurn = (turn: number, run: TradeRun): number => {
  const number = callNumber(turn, run);
  let first = turn;
  while (first > 0 && callNumber(first - 1, run) === number) first -= 1;
  return first;
};

interface Rooms {
  readonly rooms: readonly TradeRoom[];
  /** Turns before this chorus. */
  readonly before: number;
  /** Whether the whole chorus is the answer to the one before. */
  readonly answers: boolean;
}

const roomsOf = ({ chart, plan, chorus }: TradingSpec): Rooms => {
  const { trades } = readPlan(plan);
  const bars = chart.bars.length;
  if (trades.length > 0) {
    const rooms = roomsOver(bars, trades);
    return { rooms, before: chorus * rooms.length, answers: false };
  }
  const answers = chorus % 2 === 1;
  return { rooms: [{ bar: 0, bars, answer: 0 }], before: Math.floor(chorus / 2), answers };
};

/** Choruses before the calls that were made up come round again. */
export const CALL_CHORUSES = 6;

/** Makes the calls of choruses up, each chorus once. */
const createCaller = (spec: TradingSpec, rooms: readonly TradeRoom[]): ((turn: number) => Phrase) => {
  const made = new Map<number, readonly MadeCall[]>();
  const make = (round: number, before?: MadeCall): readonly MadeCall[] =>
    chorusCalls({ ...spec, rooms, seed: seedFrom(spec.seed, 'chorus', round) }, before);
  const ofRound = (round: number): readonly MadeCall[] => {
    const known = made.get(round);
    if (known !== undefined) return known;
    // So that even the first call of a chorus is another than the last one of the chorus before.
    const calls = make(round, make((round + CALL_CHORUSES - 1) % CALL_CHORUSES).at(-1));
    made.set(round, calls);
    return calls;
  };
  return (turn) => {
    const chorus = Math.floor(turn / rooms.length);
    return ofRound(chorus % CALL_CHORUSES)[turn % rooms.length]?.phrase ?? silence(spec.chart);
  };
};

const silence = ({ meter }: Chart): Phrase => ({ meter: meter.name, length: asTicks(0), notes: [] });

const callFor = (
  spec: TradingSpec,
  room: TradeRoom,
  turn: number,
  caller: (turn: number) => Phrase,
): Call => {
  const { chart, phrases = [], harp, run, mode } = spec;
  const first = firstTurn(turn, run);
  const given = phrases[callNumber(turn, run) % Math.max(1, phrases.length)];
  const own = run.heard.find((each) => each.turn === turn)?.phrase ?? silence(chart);
  const bar = chart.bars[room.bar];
  const plain = { bar: room.bar, bars: room.bars, cut: false };
  const placed =
    mode === 'lead'
      ? { ...plain, phrase: own }
      : bar !== undefined
        ? fitPhrase(given ?? caller(first), room, bar)
        : { ...plain, phrase: silence(chart) };
  const rest = room.bars + room.answer - placed.bars;
  const answer =
    room.answer === 0 ? { bar: 0, bars: room.bars } : { bar: room.bar + placed.bars, bars: rest };
  return { turn, ...placed, answer, missing: onHarp(placed.phrase, harp).missing };
};

const turnsOf = (bars: number, calls: readonly Call[], mode: TradeMode): readonly Turn[] => {
  const [caller, other]: readonly [Turn, Turn] = mode === 'lead' ? ['lead', 'listen'] : ['listen', 'answer'];
  const calling = new Set(calls.flatMap((call) => Array.from({ length: call.bars }, (_, i) => call.bar + i)));
  return Array.from({ length: bars }, (_, i) => (calling.has(i) ? caller : other));
};

/** As keys are struck: without slides and bends. */
const onKeys = ({ at, length, pitch, velocity }: NoteEvent): NoteEvent => ({
  ...{ part: 'chords', at, length, velocity },
  pitch: asMidi(Math.round(pitch)),
});

/**
 * Lays one chorus out as call and answer: who plays when, the calls, and the notes of the harp voice. Where the player
 * leads, the voice answers with what it heard of that turn, once `run` holds it.
 */
export const tradeOver = (spec: TradingSpec): Trading => {
  const { chart, harp, swing, mode, voice } = spec;
  const { rooms, before, answers } = roomsOf(spec);
  const caller = createCaller(spec, rooms);
  const calls = rooms.map((room, i) => callFor(spec, room, before + i, caller));
  const whole = rooms.some(({ answer }) => answer === 0);
  /** The bar the harp voice begins a phrase in; null where it is silent in this chorus. */
  const playedAt = ({ bar, answer }: Call): number | null => {
    if (whole) return (mode === 'lead') === answers ? 0 : null;
    return mode === 'lead' ? answer.bar : bar;
  };
  return {
    mode,
    turns: turnsOf(chart.bars.length, answers ? [] : calls, mode),
    calls,
    lead: calls.flatMap((call) => {
      const bar = playedAt(call);
      const at = bar === null ? undefined : chart.bars[bar]?.at;
      const notes = at === undefined ? [] : phraseLead(call.phrase, { harp, at, swing });
      return mode === 'lead' && voice === 'piano' ? notes.map(onKeys) : notes;
    }),
  };
};
