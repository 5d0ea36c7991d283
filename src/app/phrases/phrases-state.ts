import type { BookSong } from '../../core/book/book-song';
import type { KeptExercise } from '../../core/book/kept-exercise';
import type { MeterName } from '../../core/chart/chart';
import type { Judgement } from '../../core/judging/judge';
import type { AnswerVerdict } from '../../core/judging/judge-answer';
import type { Melody } from '../../core/melody/melody';
import type { Phrase } from '../../core/phrase/phrase';
import type { KeptPhrase } from '../../core/phrasebook/kept-phrase';
import type { StarterExercise } from '../../core/phrasebook/starter-set';
import type { LooseNote } from '../../core/practice/quantise';
import type { TradeRun } from '../../core/practice/trade-run';
import { FRESH_RUN } from '../../core/practice/trade-run';
import type { SelfMark } from '../../core/today/grade';

/** How an answer was, as the player or the ear has it. */

/** A note that was heard in a turn: ticks from its beginning, as the band counts them. */
export interface TurnNote {
  readonly at: number;
  readonly length: number;
  /** Keys, with fractions for cents. */
  readonly pitch: number;
}

/** What came of a turn. */
export interface TurnResult {
  readonly turn: number;
  readonly call: Phrase;
  /** Null where nothing was listened to. */
  readonly heard: readonly TurnNote[] | null;
  /** Seconds a tick lasted. */
  readonly secondsPerTick: number;
  /** Of an echo. */
  readonly judgement: Judgement | null;
  /** Of an answer of one's own. */
  readonly answer: AnswerVerdict | null;
  readonly mark: SelfMark | null;
  readonly bySelf: boolean;
  /** What to know about it; empty where nothing was listened to. */
  readonly sentence: string;
}

/** A phrase that is played in: notes where they were played, to be snapped to a grid as is wanted. */
export interface PlayedIn {
  readonly phase: 'waiting' | 'recording' | 'done';
  /** Empty until it is done. */
  readonly notes: readonly LooseNote[];
  readonly meter: MeterName;
  /** Ticks. */
  readonly length: number;
  /** Long : short of the off-beats played along to. */
  readonly swing: number;
}

/** What the page can ask for about playing a phrase in. */
export interface PlayInCommands {
  /** Gathers what is heard for so many bars: from the next bar of the band on, or without it from the first note on. */
  playIn(bars: number): void;
  /** Ends it early with what there is. */
  endPlayIn(): void;
  /** Puts away what was played in. */
  dropPlayIn(): void;
}

/** Something that was taken out of the library. */
export type Dropped =
  | { readonly kind: 'phrase'; readonly item: KeptPhrase }
  | { readonly kind: 'exercise'; readonly item: KeptExercise };

/** Trading, as the page shows it. */
export interface PhrasesState {
  /** Null while nothing is played in. */
  readonly playedIn: PlayedIn | null;
  readonly tradeRun: TradeRun;
  readonly trades: {
    readonly last: TurnResult | null;
    /** Marks of this Play, oldest first. */
    readonly marks: readonly SelfMark[];
    /** Whether the call or the answer is being heard again. */
    readonly hearing: 'call' | 'answer' | null;
  };
  readonly phrasebook: {
    readonly phrases: readonly KeptPhrase[];
    readonly exercises: readonly KeptExercise[];
    /** What was taken out last, so that it can be brought back. */
    readonly dropped: Dropped | null;
    /** Whether the hand-out of the class is to be printed in place of the song. */
    readonly handOut: boolean;
  };
}

/** A phrase to be kept. */
export type NewPhrase = Pick<KeptPhrase, 'name' | 'phrase' | 'level'> &
  Partial<Pick<KeptPhrase, 'words' | 'tags'>>;

/** What the page can ask for about the library of phrases. */
export interface LibraryCommands {
  /** Keeps a phrase under a name, for the position on the stand; returns its id. */
  keepPhrase(phrase: NewPhrase): string;
  /** Changes a kept phrase; the notes it had stay beside it. */
  changePhrase(
    id: string,
    change: Partial<Pick<KeptPhrase, 'name' | 'words' | 'tags' | 'level' | 'phrase'>>,
  ): void;
  /** A copy of a phrase, one of the starter set too; returns its id, null where it is gone. */
  duplicatePhrase(id: string): string | null;
  dropPhrase(id: string): void;
  restorePhrase(): void;
  /** Trades with these phrases as calls, in their order. */
  callWith(ids: readonly string[]): void;
  /** Chooses whether the hand-out of the class is printed. */
  chooseHandOut(wanted: boolean): void;
  /** The melodies of a MIDI, ABC or MusicXML file, or a sentence why there are none. Never rejects. */
  readMelodies(file: Uint8Array): Promise<readonly Melody[] | string>;
  /** Saves a phrase as MIDI, on the harp and at the tempo of the stand. */
  savePhraseMidi(name: string, phrase: Phrase): Promise<void>;
  /** Saves all phrases of one's own in one file. */
  savePhrases(): Promise<void>;
  /** Takes the phrases of such a file in beside those that are here; says what came of each piece. */
  openPhrases(text: string): Promise<readonly string[]>;
  /** Plays a phrase alone, at the stand's tempo and on its harp; while the band plays, nothing. */
  hearPhrase(phrase: Phrase): void;
}

/** What is written down beside an exercise. */
type ExerciseFacts = Pick<BookSong, 'name' | 'tags' | 'words'>;

/** What the page can ask for about exercises. */
export interface ExerciseCommands {
  /** Puts an exercise of the starter set on the stand: its music, its calls, its partner. */
  openExercise(exercise: StarterExercise): void;
  /** Keeps what is on the stand as an exercise, a name that is taken with a number; returns its id. */
  keepExercise(facts: ExerciseFacts): string;
  /** Keeps what is on the stand as the exercise with this id; what it was stays beside it. */
  keepExerciseAgain(id: string): void;
  changeExercise(id: string, change: Partial<ExerciseFacts>): void;
  /** A copy of an exercise, one of the starter set too. */
  duplicateExercise(id: string): void;
  dropExercise(id: string): void;
  restoreExercise(): void;
  /** Puts an exercise of one's own on the stand, whole. */
  openKeptExercise(id: string): void;
  /** Puts an earlier version of it on the stand, counted from the latest. */
  openEarlierExercise(id: string, which: number): void;
  /** Saves all exercises of one's own in one file. */
  saveExercises(): Promise<void>;
  /** Takes the exercises of such a file in beside those that are here; says what came of each piece. */
  openExercises(text: string): Promise<readonly string[]>;
  /** Saves the exercise on the stand, everything with it, in a file of its own. */
  saveExercise(name: string): Promise<void>;
}

/** What the page can ask for about trading. */
export interface TradeCommands {
  /** Marks the last answer by the player's own ear. */
  markAnswer(mark: SelfMark): void;
  /** A tap in the rhythm of the call, for players without a microphone: the rhythm of the answer is judged by it. */
  tapAnswer(): void;
  /** The call of the turn that goes on comes once more after it. */
  callAgain(): void;
  /** Plays the last call, or what was heard of the answer, alone; asked again, it stops. */
  hearTurn(which: 'call' | 'answer'): void;
}

/** Before anything was traded. */
export const NO_TRADES: PhrasesState = {
  playedIn: null,
  tradeRun: FRESH_RUN,
  trades: { last: null, marks: [], hearing: null },
  phrasebook: { phrases: [], exercises: [], dropped: null, handOut: false },
};
