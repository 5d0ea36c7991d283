import type { NoteName } from '../theory/chord';
import { type ReadChord, readChord } from './read-chord';
import { LONGEST_TEXT, scanChart, type WrittenBar } from './scan-chart';
import { wordKind } from './word-kind';

/** From this many chords on, a line without bar lines is likelier meant as that many bars. */
const SUSPECT = 3;

/**
 * True for a line that holds three chords or more and nothing else, no bar line and no beats: one bar as it is read,
 * though many players write a line that way and mean a bar for each chord.
 */
export const isUnparted = (
  { isLine, words }: WrittenBar,
  read: (text: string) => ReadChord | null,
): boolean =>
  isLine &&
  words.length >= SUSPECT &&
  words.every(({ text }) => {
    const is = wordKind(text);
    return is.kind === 'chord' && is.beats === 0 && !is.stop && read(is.chord) !== null;
  });

/** The text with `|` between the chords of every such line; everything else stays as typed. */
export const oneChordABar = (source: string, tonic: NoteName): string => {
  if (source.length > LONGEST_TEXT) return source;
  const parts: string[] = [];
  let from = 0;
  for (const item of scanChart(source)) {
    if (item.kind !== 'bar' || !isUnparted(item.bar, (text) => readChord(text, tonic))) continue;
    for (const [index, word] of item.bar.words.entries()) {
      parts.push(index === 0 ? source.slice(from, word.offset) : ' | ', word.text);
      from = word.offset + word.text.length;
    }
  }
  return parts.join('') + source.slice(from);
};
