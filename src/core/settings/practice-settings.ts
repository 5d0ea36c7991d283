import * as v from 'valibot';
import { BEND_LEADS, BEND_LEVELS, type BendChoice } from '../bends/bend-choice';
import { LINE_KINDS, type LineKind, PACES, type Pace } from '../lines/line-slots';
import { LINE_TASTES, type LineTaste } from '../lines/line-tastes';
import { CALL_LEVELS, type CallLevel } from '../practice/call-levels';
import { CLASS_LEVELS, type ClassLevel, LONGEST_LEVEL, SHORTEST_NOTES } from '../practice/class-levels';
import { LADDER_LIMITS, LADDERS, type LadderChoice } from '../practice/tempo-ladder';
import { ANSWER_VOICES, type AnswerVoice, TRADE_MODES, type TradeMode } from '../practice/trade-modes';
import { PLAN_LIMITS } from '../practice/trade-plan';
import { between, seed, setting, shortText, whole } from './setting';
import { TEMPO_RANGE } from './tempo';

/** Longest text of typed calls kept, in characters. */
export const MOST_CALL_TEXT = 4000;

/** The line drawn through the changes. */
export interface LineChoice {
  readonly kind: LineKind | 'none';
  /** Notes a bar of a chord-tone line. */
  readonly pace: Pace;
  readonly taste: LineTaste;
  /** 0 is the smoothest line, other numbers other good ones. */
  readonly seed: number;
  /** The harp voice plays it over the band. */
  readonly heard: boolean;
}

/** Call and answer over the form. */
export interface TradeChoice {
  readonly on: boolean;
  /** Calls typed as tab, one a line; without any they are made up. */
  readonly calls: string;
}

/** What happens after an answer that was not clean: the next call all the same, the same again, the same and slower. */
export const AFTER_ANSWERS = ['on', 'clean', 'slower'] as const;
export type AfterAnswer = (typeof AFTER_ANSWERS)[number];

/** The partner who calls. */
export interface PartnerChoice {
  /** As `readPlan` reads it. */
  readonly plan: string;
  readonly mode: TradeMode;
  readonly level: CallLevel;
  /** Calls may use what the player has not switched on. */
  readonly stretch: boolean;
  readonly after: AfterAnswer;
  /** Who answers where the player leads. */
  readonly voice: AnswerVoice;
}

/** The picture of one's own playing: while it sounds and after the chorus, or after the chorus alone. */
export const EAR_SHOWS = ['playing', 'after'] as const;
export type EarShows = (typeof EAR_SHOWS)[number];

/** Minutes of one's own playing that are kept while the microphone listens; 0 keeps nothing. */
export const TAKE_MINUTES = [0, 2, 5, 10] as const;
export type TakeMinutes = (typeof TAKE_MINUTES)[number];

/** What is practised over the song. */
export const PRACTICE_SETTINGS = {
  line: setting<LineChoice>(
    'line',
    { kind: 'none', pace: 1, taste: 'even', seed: 0, heard: false },
    v.object({
      kind: v.picklist(['none', ...LINE_KINDS]),
      pace: v.picklist(PACES),
      taste: v.picklist(LINE_TASTES.map(({ id }) => id)),
      seed,
      heard: v.boolean(),
    }),
  ),
  trade: setting<TradeChoice>(
    'call and answer',
    { on: false, calls: '' },
    v.object({ on: v.boolean(), calls: v.pipe(v.string(), v.maxLength(MOST_CALL_TEXT)) }),
  ),
  /** The rows of a class, each with what its players can do: the same call is printed for each. */
  classLevels: setting<readonly ClassLevel[]>(
    'levels of the class',
    CLASS_LEVELS,
    v.pipe(
      v.array(
        v.object({
          name: v.pipe(v.string(), v.maxLength(LONGEST_LEVEL)),
          technique: v.object({
            drawBends: v.boolean(),
            blowBends: v.boolean(),
            overbends: v.boolean(),
            off: v.array(shortText),
          }),
          shortest: v.picklist(SHORTEST_NOTES),
        }),
      ),
      v.length(CLASS_LEVELS.length),
    ),
  ),
  bends: setting<BendChoice>(
    'choice of how bends are practised',
    { level: 'developing', lead: 'tone', byResults: false },
    v.object({
      level: v.picklist(BEND_LEVELS),
      lead: v.picklist(BEND_LEADS),
      byResults: v.boolean(),
    }),
  ),
  partner: setting<PartnerChoice>(
    'partner for call and answer',
    { plan: '2+2', mode: 'echo', level: 2, stretch: false, after: 'on', voice: 'harp' },
    v.object({
      plan: v.pipe(v.string(), v.maxLength(PLAN_LIMITS.text)),
      mode: v.picklist(TRADE_MODES),
      level: v.picklist(CALL_LEVELS),
      stretch: v.boolean(),
      after: v.picklist(AFTER_ANSWERS),
      // Songs kept before there was a choice have the harp voice.
      voice: v.optional(v.picklist(ANSWER_VOICES), 'harp'),
    }),
  ),
  /** How the tempo of the song climbs. */
  ladder: setting<LadderChoice>(
    'tempo ladder',
    { by: 'off', step: 4, every: 2, top: 120 },
    v.object({
      by: v.picklist(LADDERS),
      step: between(LADDER_LIMITS.step.least, LADDER_LIMITS.step.most),
      every: whole(LADDER_LIMITS.every.least, LADDER_LIMITS.every.most),
      top: between(TEMPO_RANGE.low, TEMPO_RANGE.high),
    }),
  ),
  /** What fits fades chorus by chorus. */
  fromMemory: setting('playing from memory', false, v.boolean()),
  /** The microphone by the browser's id; null for the one the system prefers. */
  microphone: setting<string | null>('microphone', null, v.nullable(shortText)),
  /** How much of what was played is kept to be heard again. */
  takeMinutes: setting<TakeMinutes>('minutes of your playing kept', 0, v.picklist(TAKE_MINUTES)),
  /** When what the microphone hears is shown. */
  earShows: setting<EarShows>('choice of what is shown of your playing', 'playing', v.picklist(EAR_SHOWS)),
} as const;
