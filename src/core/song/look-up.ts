import { likelyChord, readChord } from '../chart-text/read-chord';
import type { Chord, ChordTone, NoteName } from '../theory/chord';
import { ENGLISH } from '../theory/note-names';
import { chordScale, SCALE_IDS, type Scale, type ScaleId, scaleName, scaleOf } from '../theory/scales';
import { plainSigns } from '../theory/symbol-parts';

/** What a chord or scale looked up comes to. */
export type LookUp =
  | {
      readonly kind: 'chord';
      /** As it is called in a sentence. */
      readonly title: string;
      readonly chord: Chord;
      readonly tones: readonly ChordTone[];
      /** The scale usually taught for it, or null where none of ours holds its tones. */
      readonly scale: Scale | null;
      /** The part of the text that was left out, usually empty. */
      readonly rest: string;
    }
  | {
      readonly kind: 'scale';
      readonly title: string;
      readonly tones: readonly ChordTone[];
      readonly scale: Scale;
    }
  /** One sentence: what was wrong and what to do. */
  | { readonly kind: 'unread'; readonly sentence: string };

/** Other words for scales (common practice, no source). */
const SCALE_WORDS: Readonly<Record<string, ScaleId>> = {
  major: 'ionian',
  minor: 'aeolian',
  'natural minor': 'aeolian',
  blues: 'minor-blues',
  pentatonic: 'major-pentatonic',
  diminished: 'whole-half',
};

const NAMED: readonly (readonly [string, ScaleId])[] = [
  ...SCALE_IDS.flatMap((id) => [
    [id.replaceAll('-', ' '), id] as const,
    [scaleName(id).replace(/[(),]/g, ''), id] as const,
  ]),
  ...Object.entries(SCALE_WORDS),
];

/** Longer than any chord or scale; so much of a text is repeated in a message. */
const LONGEST = 40;
/** So many letters of a scale's name are enough to know it by, while it is typed. */
const FEWEST_LETTERS = 3;

const scaleIdOf = (words: string): ScaleId | null => {
  const exact = NAMED.find(([name]) => name === words);
  const begun = words.length < FEWEST_LETTERS ? undefined : NAMED.find(([name]) => name.startsWith(words));
  return (exact ?? begun)?.[1] ?? null;
};

const readScale = (text: string): Scale | null => {
  const [, letter = '', sign = '', words = ''] = /^([A-Ga-g])([#b]?)[ -]+(.+)$/.exec(text) ?? [];
  const plain = words
    .toLowerCase()
    .replace(/[(),-]/g, ' ')
    .replace(/\bscale\b/, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  const id = plain === '' ? null : scaleIdOf(plain);
  return id === null ? null : scaleOf(id, letter.toUpperCase() + sign);
};

const chordLookUp = (chord: Chord, rest: string): LookUp => ({
  kind: 'chord',
  title: ENGLISH.chord(chord),
  chord,
  tones: chord.tones,
  scale: chordScale(chord),
  rest: rest.trim(),
});

/** A symbol keeps its own spelling, whatever the key; a numeral stands for a chord of the key. */
const readAnyChord = (text: string, tonic: NoteName): LookUp | null => {
  const [, root] = /^\(*([A-G][#b]?)/.exec(text) ?? [];
  const read = readChord(text, root ?? tonic);
  return read === null ? null : chordLookUp(read.chord, read.rest);
};

/**
 * Reads a chord (`Abm`, `F#ø7`, `IV7` in the key of `tonic`) or a scale (`D dorian`, `Bb minor blues`) to be looked
 * up. Total: null for nothing typed, a sentence for the player where it is neither.
 */
export const readLookUp = (text: string, tonic: NoteName): LookUp | null => {
  const plain = plainSigns(text.trim());
  if (plain === '') return null;
  const scale =
    plain.length > LONGEST ? null : readScale(text.trim().replaceAll('♯', '#').replaceAll('♭', 'b'));
  if (scale !== null) {
    const title = `${ENGLISH.note(scale.tonic)} ${scale.name}`;
    return { kind: 'scale', title, tones: scale.tones, scale };
  }
  const likely = likelyChord(plain);
  const sameBut = likely !== null && likely.toLowerCase() === plain.toLowerCase();
  const chord = readAnyChord(plain, tonic) ?? (sameBut ? readAnyChord(likely, tonic) : null);
  if (chord !== null) return chord;
  const typed = text.trim();
  const shown = typed.length > LONGEST ? `${typed.slice(0, LONGEST)}…` : typed;
  const advice =
    likely === null
      ? 'Type a chord like A♭m or F♯7, or a scale like D dorian.'
      : `Did you mean ${ENGLISH.text(likely)}?`;
  return { kind: 'unread', sentence: `“${shown}” is no chord or scale known here. ${advice}` };
};
