import { Interval, Note } from 'tonal';
import { romanChord } from '../chart/roman';
import type { NoteName } from '../theory/chord';
import { bassNameOf } from '../theory/chords';
import { ENGLISH } from '../theory/note-names';
import { isNoteName, keyName, pitchClassOf, withoutDoubleAccidental } from '../theory/pitch';
import { plainSigns } from '../theory/symbol-parts';
import { asPitchClass } from '../theory/units';
import type { Word } from './chart-signs';
import { readKey } from './header-lines';
import type { ChartReading } from './read-chart';
import { readChord } from './read-chord';
import { type Item, LONGEST_TEXT, scanChart, wordsOf } from './scan-chart';
import { wordKind } from './word-kind';

const ROOT = /^(\(*)[A-G](?:[#♯]{1,2}|[b♭]{1,2}|𝄪|𝄫)?/u;
/** The symbol before its bass, and what stands behind that: brackets that close, or what is no chord's. */
const OVER = /^(.*\/\(*)[A-G](?:[#♯]{1,2}|[b♭]{1,2}|𝄪|𝄫)?([^/]*)$/u;

/** Writes a name with the accidentals the text around it uses. */
const written = (name: NoteName, text: string): string => (/[♯♭𝄪𝄫]/u.test(text) ? ENGLISH.note(name) : name);

/** The alteration a symbol goes on with behind its root. */
const ALTERATION = /^[#b♯♭𝄪𝄫]+\d*/u;

/**
 * A root or bass with what follows it; an alteration that would join the root's own sign stands in brackets, since the 11 in
 * `B#11` is that of B sharp and not the sharp one of B.
 */
const joined = (root: string, rest: string): string =>
  ROOT.exec(root + rest)?.[0] === root
    ? root + rest
    : root + rest.replace(ALTERATION, (alteration) => `(${alteration})`);

/**
 * The same symbol on other notes; numerals and what is no chord stay. A minor chord written by a small letter is written
 * out, since a small b is no chord.
 */
const moveSymbol = (text: string, from: NoteName, to: NoteName): string => {
  const read = readChord(text, from);
  if (read === null || (read.large === null && !ROOT.test(text))) return text;
  const moved = romanChord(read.chord.roman, to);
  if (read.large !== null) return moved.symbol;
  const [root = '', before = ''] = ROOT.exec(text) ?? [];
  const symbol = joined(before + written(moved.rootName, text), text.slice(root.length));
  const [, over, rest = ''] = OVER.exec(symbol) ?? [];
  if (over === undefined) return symbol;
  return over + joined(written(bassNameOf(moved), text), rest);
};

const moveBass = (text: string, bass: string, from: NoteName, to: NoteName): string => {
  const name = plainSigns(bass);
  const moved = withoutDoubleAccidental(Note.transpose(name, Interval.distance(from, to)));
  return isNoteName(moved) ? text.replace(bass, written(moved, bass)) : text;
};

const moveWord = ({ text }: Word, from: NoteName, to: NoteName): string => {
  const is = wordKind(text);
  if (is.kind === 'bass') return moveBass(text, is.bass, from, to);
  if (is.kind !== 'chord') return text;
  return moveSymbol(is.chord, from, to) + text.slice(is.chord.length);
};

/** A key moved as far as the tonic is; the chart's own becomes that tonic as it is spelled. */
const moveKeyText = (text: string, from: NoteName, to: NoteName): string => {
  const key = readKey(text);
  if (key === null) return text;
  const moved = asPitchClass(pitchClassOf(key.tonic) - pitchClassOf(from) + pitchClassOf(to));
  const name = moved === pitchClassOf(to) ? to : keyName(moved, key.mode);
  return text.replace(/^[A-Ga-g][#b♯♭]?/, written(name, text));
};

const wordsIn = (item: Item): readonly Word[] => {
  if (item.kind === 'bar') return item.bar.words;
  return item.kind === 'header' && item.name === 'pick-up' ? wordsOf(item.value.text, item.value) : [];
};

/**
 * The text on another spelled tonic: chord symbols and keys move, everything else (numerals, bar lines, signs, blanks, words
 * not understood, a text too long to be read) stays as typed.
 */
export const respellText = ({ source, chart }: ChartReading, tonic: NoteName): string => {
  if (source.length > LONGEST_TEXT) return source;
  const parts: string[] = [];
  let from = 0;
  for (const item of scanChart(source)) {
    if (item.kind === 'header' && item.name === 'key') {
      const { offset, text } = item.value;
      parts.push(source.slice(from, offset), moveKeyText(text, chart.tonic, tonic));
      from = offset + text.length;
    }
    for (const word of wordsIn(item)) {
      parts.push(source.slice(from, word.offset), moveWord(word, chart.tonic, tonic));
      from = word.offset + word.text.length;
    }
  }
  return parts.join('') + source.slice(from);
};

/**
 * The text moved by whole semitones, with the tonic it then stands in, spelled as usual. What is no chord stays.
 *
 * @example
 * const options = { tonic: 'C', mode: 'major', meter: '4/4', title: 'One bar' };
 * transposeText(readChart('| C7 F7 | % |', options), 7) // { text: '| G7 C7 | % |', tonic: 'G' }
 */
export const transposeText = (
  reading: ChartReading,
  semitones: number,
): { readonly text: string; readonly tonic: NoteName } => {
  const { tonic: from, mode } = reading.chart;
  if (reading.source.length > LONGEST_TEXT) return { text: reading.source, tonic: from };
  const tonic = keyName(asPitchClass(pitchClassOf(from) + semitones), mode);
  return { text: respellText(reading, tonic), tonic };
};
