/** An answer of one's own over the chords: whether it lands, leaves space, and takes up what was called. */
import type { ChordSpan } from '../chart/chart';
import { chordAt } from '../chart/chord-at';
import { asPitchClass } from '../theory/units';

/** A note in ticks from the beginning of the answer; keys with fractions for cents. */
export interface AnswerNote {
  readonly at: number;
  readonly length: number;
  readonly pitch: number;
}

/** What an answer is judged against. */
export interface AnswerContext {
  /** Chords from the beginning of the answer. */
  readonly chords: readonly ChordSpan[];
  /** Ticks of the room it has. */
  readonly room: number;
  readonly beatTicks: number;
  /** Beginnings of the call's notes, and their keys, in order. */
  readonly call: readonly AnswerNote[];
}

/** What an answer to a call was like. */
export interface AnswerVerdict {
  /** Whether its last note is one of the chord under it. */
  readonly landed: boolean;
  /** Share of the room that is silence, 0–1. */
  readonly space: number;
  /** How much of the call's beginning is in it, in rhythm or in ups and downs, 0–1. */
  readonly motif: number;
  /** 0–100. */
  readonly mark: number;
  readonly sentence: string;
}

/** Silence that makes a phrase one to be heard: a quarter of the room (common practice, no source). */
const SPACE = 0.25;
/** Notes of a call that make its idea, and how much of it is known again. */
const IDEA = { notes: 4, share: 0.6 } as const;

const isInChord = (note: AnswerNote, { chords }: AnswerContext): boolean =>
  chordAt(chords, note.at + note.length / 2)?.chord.tones.some(
    ({ pitchClass }) => pitchClass === asPitchClass(Math.round(note.pitch)),
  ) ?? false;

/** Lengths from note to note in eighths of a beat's half, and moves up (1), down (−1) or level (0). */
const rhythmOf = (notes: readonly AnswerNote[], beat: number): readonly number[] =>
  notes.slice(1).map(({ at }, i) => Math.round((at - (notes[i]?.at ?? 0)) / (beat / 2)));
const contourOf = (notes: readonly AnswerNote[]): readonly number[] =>
  notes.slice(1).map(({ pitch }, i) => Math.sign(Math.round(pitch) - Math.round(notes[i]?.pitch ?? 0)));

/** The largest share of a pattern found anywhere in a row, in order and place. */
const shareIn = (pattern: readonly number[], row: readonly number[]): number => {
  if (pattern.length === 0) return 0;
  const starts = row.map((_, start) => pattern.filter((each, i) => row[start + i] === each).length);
  return Math.max(0, ...starts) / pattern.length;
};

const motifShare = (notes: readonly AnswerNote[], { call, beatTicks }: AnswerContext): number => {
  const idea = call.slice(0, IDEA.notes);
  const rhythm = shareIn(rhythmOf(idea, beatTicks), rhythmOf(notes, beatTicks));
  return Math.max(rhythm, shareIn(contourOf(idea), contourOf(notes)));
};

const sentenceOf = (landed: boolean, spacious: boolean, taken: boolean): string => {
  if (!landed)
    return `${taken ? 'It takes up the call. ' : ''}End on a note of the chord: look at what fits now for the last one.`;
  if (!spacious) return 'It comes home. Leave a rest before the next call, so that it can be heard.';
  return taken
    ? 'It takes up the call, comes home and leaves space: say it once more, with one note changed.'
    : 'It comes home and leaves space. Next time begin with the first notes of the call.';
};

/** Judges an answer. One without notes has said nothing yet, and gets a sentence that invites. */
export const judgeAnswer = (notes: readonly AnswerNote[], context: AnswerContext): AnswerVerdict => {
  const last = notes.at(-1);
  if (last === undefined) {
    const sentence = 'Nothing was heard in your turn: two notes of the call are answer enough.';
    return { landed: false, space: 1, motif: 0, mark: 0, sentence };
  }
  const sounding = notes.reduce((sum, { length }) => sum + length, 0);
  const space = Math.max(0, 1 - sounding / Math.max(1, context.room));
  const landed = isInChord(last, context);
  const motif = motifShare(notes, context);
  const spacious = space >= SPACE;
  const mark = Math.round((landed ? 50 : 0) + 25 * Math.min(1, space / SPACE) + 25 * motif);
  return { landed, space, motif, mark, sentence: sentenceOf(landed, spacious, motif >= IDEA.share) };
};
