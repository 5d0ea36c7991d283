import { barTicks, METERS } from '../chart/build-chart';
import type { Meter, MeterName } from '../chart/chart';
import type { Problem, TextSpan } from '../chart-text/chart-problems';
import { asTicks, type Ticks } from '../theory/units';
import { type Dynamic, isDynamic, USUAL_DYNAMIC } from './dynamics';
import { readLength } from './note-lengths';
import type { Phrase, PhraseNote } from './phrase';
import { barNotFull, noLength, phraseTooLong } from './phrase-problems';
import { type ReadNote, readNote } from './read-note';

/**
 * Phrases as text: tab with simple note lengths.
 *
 *     -2:q -3':e -3 4:h | r:q (-2 -3):e -2 r:h
 *
 * Words are parted by blanks. A note is tab in any of the three styles, several holes stand in brackets, `r` is a
 * rest. `-4~-4'~-4` bends and comes back, in even steps over the note (`-3'-30c` is 30 cents below -3'), `-1..-4`
 * slides over the holes between, `-4*-5` shakes, `>` at the end is an accent; `pp p mp mf f ff` hold until the next. After a colon comes the length; without one a note is as long as the one before it, and the first lasts a
 * beat. Bar lines are only checked.
 */

/** A phrase longer than this is no phrase. */
export const MOST_PHRASE_BARS = 16;

/** A text with the phrase it stands for. */
export interface PhraseReading {
  /** The text as typed. */
  readonly source: string;
  readonly phrase: Phrase;
  /** In reading order. */
  readonly problems: readonly Problem[];
}

const WORD = /\|+|\([^()|\n]*\)[^\s|()]*|[^\s|()]+|[()]/g;
const NEW_LINE = /\r\n|\r|\n/;

const wordsOf = (source: string): readonly TextSpan[] =>
  source.split(NEW_LINE).flatMap((text, index) =>
    [...text.matchAll(WORD)].map((match) => ({
      text: match[0],
      line: index + 1,
      column: match.index + 1,
    })),
  );

/** A word as note or rest. */
interface Read extends ReadNote {
  readonly length: Ticks | null;
}

const readWord = (span: TextSpan): Read => {
  const colon = span.text.lastIndexOf(':');
  if (colon < 0) return { ...readNote(span.text, span), length: null };
  const read = readNote(span.text.slice(0, colon), span);
  const text = span.text.slice(colon + 1);
  const length = readLength(text);
  const problems = length === null ? [...read.problems, noLength(span, text)] : read.problems;
  return { ...read, length, problems };
};

const checkBar = (span: TextSpan, ticks: number, meter: Meter): readonly Problem[] =>
  ticks % barTicks(meter) === 0
    ? []
    : [barNotFull(span, Math.round((100 * ticks) / meter.beatTicks) / 100, meter.beats)];

/**
 * Reads a phrase. Never throws on any text; what is not understood is a rest as long as the note would be.
 *
 * @example
 * const { phrase, problems } = readPhrase("-2:q. -3'':e 4:h |", '4/4');
 * phrase.notes.map(({ length }) => length) // [720, 240, 960]
 * problems // []
 */
export const readPhrase = (source: string, meterName: MeterName): PhraseReading => {
  const meter = METERS[meterName];
  const most = MOST_PHRASE_BARS * barTicks(meter);
  const problems: Problem[] = [];
  const notes: PhraseNote[] = [];
  let at = 0;
  let barStart = 0;
  let length: Ticks = meter.beatTicks;
  let dynamic: Dynamic = USUAL_DYNAMIC;
  for (const span of wordsOf(source)) {
    if (span.text.startsWith('|')) {
      problems.push(...checkBar(span, at - barStart, meter));
      barStart = at;
      continue;
    }
    if (isDynamic(span.text)) {
      dynamic = span.text;
      continue;
    }
    const read = readWord(span);
    length = read.length ?? length;
    if (at + length > most) {
      problems.push(phraseTooLong(span, MOST_PHRASE_BARS));
      break;
    }
    problems.push(...read.problems);
    if (read.sounds.length > 0) {
      const loud = dynamic === USUAL_DYNAMIC ? {} : { dynamic };
      notes.push({ at: asTicks(at), length, sounds: read.sounds, ...loud, ...read.manner });
    }
    at += length;
  }
  return { source, phrase: { meter: meterName, length: asTicks(at), notes }, problems };
};
