/** Changes of a phrase by hand: every one gives a whole phrase, its notes in order and apart. */

import { barTicks, METERS } from '../chart/build-chart';
import type { MeterName } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import { asTicks } from '../theory/units';
import { type Phrase, type PhraseNote, type PhraseSound, phraseSound } from './phrase';
import { MOST_PHRASE_BARS } from './read-phrase';

/** Steps of the grid that a meter offers, in ticks, the usual one first: in compound meters the beat has three. */
export const gridSteps = (meter: MeterName): readonly number[] =>
  METERS[meter].beatTicks === 720 ? [240, 720, 120] : [240, 160, 120, 480];

/** The place of the grid nearest to a tick, not before the beginning. */
export const snapTo = (tick: number, step: number): number => Math.max(0, Math.round(tick / step) * step);

/** The longest a phrase may be, in ticks. */
export const mostTicks = ({ meter }: Pick<Phrase, 'meter'>): number =>
  MOST_PHRASE_BARS * barTicks(METERS[meter]);

/** With these notes, as many whole bars as they need, and no fewer than before. */
const withNotes = (phrase: Phrase, notes: readonly PhraseNote[]): Phrase => {
  const bar = barTicks(METERS[phrase.meter]);
  const end = notes.reduce((most, { at, length }) => Math.max(most, at + length), 0);
  const length = Math.max(phrase.length, Math.ceil(end / bar) * bar);
  return { ...phrase, length: asTicks(length), notes: notes.toSorted((a, b) => a.at - b.at) };
};

/** A new note, and where. */
export interface NewNote {
  readonly at: number;
  readonly length: number;
  readonly sound: PhraseSound;
}

/** Puts a note in: the one it begins in ends there, and it ends where the next begins. In place of one at its tick. */
export const addNote = (phrase: Phrase, { at, length, sound }: NewNote): Phrase => {
  const most = mostTicks(phrase);
  if (at < 0 || at >= most) return phrase;
  const next = phrase.notes.find((note) => note.at > at)?.at ?? most;
  const others = phrase.notes
    .filter((note) => note.at !== at)
    .map((note) =>
      note.at < at && note.at + note.length > at ? { ...note, length: asTicks(at - note.at) } : note,
    );
  const added = {
    at: asTicks(at),
    length: asTicks(Math.min(length, next - at)),
    sounds: [phraseSound(sound)],
  };
  return withNotes(phrase, [...others, added]);
};

/** Takes a note out; silence is left in its place. */
export const removeNote = (phrase: Phrase, index: number): Phrase => ({
  ...phrase,
  notes: phrase.notes.filter((_, i) => i !== index),
});

const changeNote = (phrase: Phrase, index: number, note: PhraseNote): Phrase =>
  withNotes(
    phrase,
    phrase.notes.map((each, i) => (i === index ? note : each)),
  );

/** Where a note may lie without touching its neighbours. */
const roomOf = (phrase: Phrase, index: number): { readonly from: number; readonly to: number } => {
  const before = phrase.notes[index - 1];
  return {
    from: before === undefined ? 0 : before.at + before.length,
    to: phrase.notes[index + 1]?.at ?? mostTicks(phrase),
  };
};

/** Moves a note to another tick, as far as its neighbours let it. */
export const moveNote = (phrase: Phrase, index: number, to: number): Phrase => {
  const note = phrase.notes[index];
  if (note === undefined) return phrase;
  const room = roomOf(phrase, index);
  const at = Math.max(room.from, Math.min(room.to - note.length, to));
  return changeNote(phrase, index, { ...note, at: asTicks(at) });
};

/** Makes a note as long as is asked for, a tick at least, and no longer than up to the next. */
export const resizeNote = (phrase: Phrase, index: number, length: number): Phrase => {
  const note = phrase.notes[index];
  if (note === undefined) return phrase;
  const most = roomOf(phrase, index).to - note.at;
  return changeNote(phrase, index, { ...note, length: asTicks(Math.max(1, Math.min(most, length))) });
};

/** Gives a note another sound; its curve, slide and shake went with the old one. */
export const soundNote = (phrase: Phrase, index: number, sound: PhraseSound): Phrase => {
  const note = phrase.notes[index];
  if (note === undefined) return phrase;
  const { curve: _, slide: __, shake: ___, ...rest } = note;
  return changeNote(phrase, index, { ...rest, sounds: [phraseSound(sound)] });
};

/** What a hole has on one breath, from the natural note down its bends to the overbend. */
export const soundsOf = (harp: Harp, { hole, breath }: Pick<Sound, 'hole' | 'breath'>): readonly Sound[] =>
  harp.sounds
    .filter((sound) => sound.hole === hole && sound.breath === breath)
    .toSorted(
      (a, b) => Number(a.technique === 'overbend') - Number(b.technique === 'overbend') || a.bend - b.bend,
    );

const isSame = (a: PhraseSound, b: PhraseSound): boolean => a.technique === b.technique && a.bend === b.bend;

/** The sound one step further down the bends of its hole, or back up (`by` −1); itself where there is none. */
export const bentBy = (harp: Harp, sound: PhraseSound, by: 1 | -1): PhraseSound => {
  const all = soundsOf(harp, sound);
  return all[all.findIndex((each) => isSame(each, sound)) + by] ?? sound;
};

/** The same on another hole: as deep a bend as it has there, else its natural note; itself beyond the ends. */
export const onHole = (harp: Harp, sound: PhraseSound, hole: number): PhraseSound => {
  const all = soundsOf(harp, { hole, breath: sound.breath });
  return all.find((each) => isSame(each, sound)) ?? all[0] ?? sound;
};

/** The natural note of the hole on the other breath. */
export const otherBreath = (harp: Harp, sound: PhraseSound): PhraseSound =>
  soundsOf(harp, { hole: sound.hole, breath: sound.breath === 'blow' ? 'draw' : 'blow' })[0] ?? sound;
