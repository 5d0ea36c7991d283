import { barTicks, METERS } from '../chart/build-chart';
import { type TabStyle, tab, tabGroup } from '../harp/tab';
import { asTicks } from '../theory/units';
import { printLength } from './note-lengths';
import type { Phrase, PhraseSound } from './phrase';

interface Event {
  readonly at: number;
  readonly length: number;
  /** `r` for a rest. */
  readonly text: string;
}

const soundText = (sounds: readonly PhraseSound[], style: TabStyle): string => {
  const [only] = sounds;
  return sounds.length === 1 && only !== undefined ? tab(only, style) : tabGroup(sounds, style);
};

/** A rest, cut at bar lines so that each bar shows its own. */
const rests = (from: number, to: number, bar: number): readonly Event[] => {
  const cuts = [from];
  for (let at = (Math.floor(from / bar) + 1) * bar; at < to; at += bar) cuts.push(at);
  return cuts.flatMap((at, i) => {
    const length = (cuts[i + 1] ?? to) - at;
    return length > 0 ? [{ at, length, text: 'r' }] : [];
  });
};

const eventsOf = ({ notes, length }: Phrase, bar: number, style: TabStyle): readonly Event[] => {
  const events: Event[] = [];
  let at = 0;
  for (const note of notes) {
    events.push(...rests(at, note.at, bar));
    events.push({ at: note.at, length: note.length, text: soundText(note.sounds, style) });
    at = note.at + note.length;
  }
  return [...events, ...rests(at, length, bar)];
};

/** Writes a phrase as text in a tab style; `readPhrase` gives the same phrase back. */
export const printPhrase = (phrase: Phrase, style: TabStyle): string => {
  const bar = barTicks(METERS[phrase.meter]);
  const words: string[] = [];
  let before = -1;
  for (const { at, length, text } of eventsOf(phrase, bar, style)) {
    if (at > 0 && at % bar === 0) words.push('|');
    words.push(length === before ? text : `${text}:${printLength(asTicks(length))}`);
    before = length;
  }
  return words.join(' ');
};
