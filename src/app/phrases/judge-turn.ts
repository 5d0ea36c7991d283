import type { Chart } from '../../core/chart/chart';
import { feelOf } from '../../core/feels/feels';
import type { Harp } from '../../core/harp/harp';
import { type AskedNote, askedNotes, type PlayedNote } from '../../core/judging/asked-notes';
import { judge, TOLERANCES } from '../../core/judging/judge';
import { type AnswerNote, judgeAnswer } from '../../core/judging/judge-answer';
import { judgeSentence } from '../../core/judging/judge-words';
import { tappedNotes } from '../../core/judging/tapped-notes';
import { phraseLead } from '../../core/phrase/phrase-lead';
import type { Call } from '../../core/practice/trading';
import { swingRatio } from '../../core/score/swing';
import type { Settings } from '../../core/settings/settings';
import { asTicks } from '../../core/theory/units';
import type { SelfMark } from '../../core/today/grade';
import type { TurnResult } from './phrases-state';
import type { HeardInSection } from './turn-notes';

/** A turn of the player's as it was played. */
export interface PlayedTurn {
  readonly call: Call;
  readonly settings: Settings;
  readonly chart: Chart;
  readonly harp: Harp;
  /** Ticks of the section the turn begins at. */
  readonly start: number;
  readonly room: number;
  readonly secondsPerTick: number;
  /** Null where nothing was listened to. */
  readonly heard: readonly HeardInSection[] | null;
  /** Ticks of the section at which the player tapped, where nothing was listened to. */
  readonly taps: readonly number[];
}

/** From these marks on an answer is clean, or nearly; a note that is missing or another keeps it from clean. */
const CLEAN = 85;
const NEARLY = 60;

/** What an answer of one's own is clean from: it lands, and something else is right. */
const ANSWER_CLEAN = 70;

/** Long : short of the band's lead. */
export const leadSwing = ({ settings: { style, tempo } }: Pick<PlayedTurn, 'settings'>): number =>
  swingRatio(feelOf(style.feel), { swing: style.swing, tempo, part: 'lead' });

const beatSeconds = ({ chart, secondsPerTick }: PlayedTurn): number => chart.meter.beatTicks * secondsPerTick;

/** What of an echo was heard, or tapped. */
interface Echo {
  readonly played: readonly PlayedNote[];
  readonly tapped: boolean;
}

const heardEcho = (turn: PlayedTurn, heard: readonly HeardInSection[]): Echo => ({
  tapped: false,
  played: heard.map(
    ({ ticks, length, pitch, sounds }): PlayedNote => ({
      at: (ticks - turn.start) * turn.secondsPerTick,
      length: length * turn.secondsPerTick,
      pitch,
      sounds,
    }),
  ),
});

const askedIn = (turn: PlayedTurn): readonly AskedNote[] => {
  const { call, harp, secondsPerTick } = turn;
  return askedNotes(call.phrase, { harp, swing: leadSwing(turn), secondsPerTick });
};

const tappedEcho = (turn: PlayedTurn): Echo => {
  const taps = turn.taps.map((ticks) => (ticks - turn.start) * turn.secondsPerTick);
  return { tapped: true, played: tappedNotes(askedIn(turn), taps) };
};

const judgedEcho = (turn: PlayedTurn, { played, tapped }: Echo): Partial<TurnResult> => {
  const { settings } = turn;
  const tolerance = TOLERANCES[settings.partner.level - 1] ?? { cents: 35, seconds: 0.06 };
  const judgement = judge(askedIn(turn), played, tolerance);
  const whole = judgement.notes.every(({ pitch }) => pitch !== 'missed' && pitch !== 'other');
  const mark: SelfMark =
    whole && judgement.mark >= CLEAN ? 'clean' : judgement.mark >= NEARLY ? 'nearly' : 'again';
  const all = tapped ? 'All of it, in time.' : 'All of it, in tune and in time.';
  const sentence = judgeSentence({ judgement, beat: beatSeconds(turn), tapped }) ?? all;
  return { judgement, mark, sentence };
};

const answerNotes = (heard: readonly HeardInSection[], start: number): readonly AnswerNote[] =>
  heard.map(({ ticks, length, pitch }) => ({ at: ticks - start, length, pitch }));

const judgedAnswer = (turn: PlayedTurn, heard: readonly HeardInSection[]): Partial<TurnResult> => {
  const { call, chart, harp, start, room } = turn;
  const first = chart.bars[call.answer.bar]?.at ?? 0;
  const chords = chart.bars
    .slice(call.answer.bar, call.answer.bar + call.answer.bars)
    .flatMap((bar) => bar.chords)
    .map((span) => ({ ...span, at: asTicks(span.at - first) }));
  const called = phraseLead(call.phrase, { harp, at: asTicks(0), swing: leadSwing(turn) });
  const answer = judgeAnswer(answerNotes(heard, start), {
    ...{ chords, room, beatTicks: chart.meter.beatTicks },
    call: called.map(({ at, length, pitch }) => ({ at, length, pitch })),
  });
  const mark: SelfMark =
    answer.landed && answer.mark >= ANSWER_CLEAN ? 'clean' : answer.landed ? 'nearly' : 'again';
  return { answer, mark, sentence: answer.sentence };
};

/** What came of a turn. Where nothing was listened to it waits for the player's own mark. */
export const judgeTurn = (turn: PlayedTurn): TurnResult => {
  const { call, settings, heard, start, secondsPerTick } = turn;
  const plain: TurnResult = {
    turn: call.turn,
    call: call.phrase,
    heard: heard === null ? null : answerNotes(heard, start),
    ...{ secondsPerTick, judgement: null, answer: null, mark: null, bySelf: false, sentence: '' },
  };
  const { mode } = settings.partner;
  if (mode === 'lead') return plain;
  if (heard === null)
    return mode === 'echo' && turn.taps.length > 0
      ? { ...plain, ...judgedEcho(turn, tappedEcho(turn)) }
      : plain;
  const judged = mode === 'echo' ? judgedEcho(turn, heardEcho(turn, heard)) : judgedAnswer(turn, heard);
  return { ...plain, ...judged };
};
