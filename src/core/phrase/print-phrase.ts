import { barTicks, METERS } from '../chart/build-chart';
import { type TabStyle, tab, tabGroup } from '../harp/tab';
import { asTicks } from '../theory/units';
import { USUAL_DYNAMIC } from './dynamics';
import { printLength } from './note-lengths';
import type { Phrase, PhraseManner, PhraseNote, PhraseSound } from './phrase';

interface Event {
  readonly at: number;
  readonly length: number;
  /** `r` for a rest. */
  readonly text: string;
  /** Null for a rest, which has none. */
  readonly dynamic: string | null;
}

const soundText = (sounds: readonly PhraseSound[], style: TabStyle): string => {
  const [only] = sounds;
  return sounds.length === 1 && only !== undefined ? tab(only, style) : tabGroup(sounds, style);
};

/** A point of a curve: semitones as tab writes them, the cents beyond in figures. */
const pointText = (sound: PhraseSound, cents: number, style: TabStyle): string => {
  const bend = Math.floor(cents / 100);
  const rest = cents - 100 * bend;
  const text = tab({ ...sound, bend, technique: bend > 0 ? 'bend' : 'natural' }, style);
  return rest === 0 ? text : `${text}-${rest}c`;
};

/** What to play, with its slide, curve or shake; loudness and length apart. */
export const noteText = (
  { sounds, curve, slide, shake }: Pick<PhraseNote, 'sounds'> & PhraseManner,
  style: TabStyle,
): string => {
  const [only] = sounds;
  if (sounds.length !== 1 || only === undefined) return soundText(sounds, style);
  const plain = (hole: number): string => tab({ ...only, hole, technique: 'natural', bend: 0 }, style);
  return [
    slide === undefined ? '' : `${plain(slide)}..`,
    curve === undefined
      ? soundText(sounds, style)
      : curve.map((cents) => pointText(only, cents, style)).join('~'),
    shake === undefined ? '' : `*${plain(shake)}`,
  ].join('');
};

/** A rest, cut at bar lines so that each bar shows its own. */
const rests = (from: number, to: number, bar: number): readonly Event[] => {
  const cuts = [from];
  for (let at = (Math.floor(from / bar) + 1) * bar; at < to; at += bar) cuts.push(at);
  return cuts.flatMap((at, i) => {
    const length = (cuts[i + 1] ?? to) - at;
    return length > 0 ? [{ at, length, text: 'r', dynamic: null }] : [];
  });
};

const eventsOf = ({ notes, length }: Phrase, bar: number, style: TabStyle): readonly Event[] => {
  const events: Event[] = [];
  let at = 0;
  for (const note of notes) {
    events.push(...rests(at, note.at, bar));
    events.push({
      at: note.at,
      length: note.length,
      text: noteText(note, style) + (note.accent ? '>' : ''),
      dynamic: note.dynamic ?? USUAL_DYNAMIC,
    });
    at = note.at + note.length;
  }
  return [...events, ...rests(at, length, bar)];
};

/** Writes a phrase as text in a tab style; `readPhrase` gives the same phrase back. */
export const printPhrase = (phrase: Phrase, style: TabStyle): string => {
  const bar = barTicks(METERS[phrase.meter]);
  const words: string[] = [];
  let before = -1;
  let loud: string = USUAL_DYNAMIC;
  for (const { at, length, text, dynamic } of eventsOf(phrase, bar, style)) {
    if (at > 0 && at % bar === 0) words.push('|');
    if (dynamic !== null && dynamic !== loud) {
      words.push(dynamic);
      loud = dynamic;
    }
    words.push(length === before ? text : `${text}:${printLength(asTicks(length))}`);
    before = length;
  }
  return words.join(' ');
};
