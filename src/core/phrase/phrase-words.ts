import { spokenHole } from '../harp/tab';
import type { Dynamic } from './dynamics';
import type { Phrase, PhraseNote, PhraseSound } from './phrase';
import { type RhythmSign, rhythmBars } from './rhythm-signs';

const valueWords = ({ value, dotted, triplet }: RhythmSign): string =>
  `${dotted ? 'dotted ' : ''}${triplet ? 'triplet ' : ''}${value}`;

const soundWords = (sounds: readonly PhraseSound[]): string =>
  `${sounds.length === 1 ? 'hole' : 'holes'} ${sounds.map(spokenHole).join(' and ')}`;

const LOUDNESS: Readonly<Record<Dynamic, string>> = {
  pp: 'very soft',
  p: 'soft',
  mp: 'rather soft',
  mf: 'medium loud',
  f: 'loud',
  ff: 'very loud',
};

/** A depth below the natural note: `a semitone and 30 cents down`. */
const depthWords = (cents: number): string => {
  const semitones = Math.floor(cents / 100);
  const rest = cents - 100 * semitones;
  const parts = [
    ...(semitones === 0 ? [] : [semitones === 1 ? 'a semitone' : `${semitones} semitones`]),
    ...(rest === 0 ? [] : [`${rest} cents`]),
  ];
  return parts.length === 0 ? 'the natural note' : `${parts.join(' and ')} down`;
};

const isSplit = (sounds: readonly PhraseSound[]): boolean => {
  const holes = sounds.map(({ hole }) => hole).sort((a, b) => a - b);
  return holes.some((hole, i) => i > 0 && hole - (holes[i - 1] ?? hole) > 1);
};

const mannerWords = ({ sounds, dynamic, accent, curve, slide, shake }: PhraseNote): string =>
  [
    ...(isSplit(sounds) ? [', the holes between blocked'] : []),
    ...(slide === undefined ? [] : [`, slid into from hole ${slide}`]),
    ...(curve === undefined ? [] : [`, bending over ${curve.map(depthWords).join(', ')}`]),
    ...(shake === undefined ? [] : [`, shaken with hole ${shake}`]),
    ...(accent ? [', accented'] : []),
    ...(dynamic === undefined ? [] : [`, ${LOUDNESS[dynamic]}`]),
  ].join('');

/** A note with the values tied to it; null where the sign only goes on with what was before it. */
const signWords = (sign: RhythmSign, bar: readonly RhythmSign[], at: number): string | null => {
  if (sign.rest) return `rest, ${valueWords(sign)}`;
  if (sign.note === null) return at === 0 ? `held on, ${valueWords(sign)}` : null;
  const end = bar.findIndex((each, i) => i >= at && !each.tied);
  const tied = bar.slice(at, end < 0 ? bar.length : end + 1).map(valueWords);
  const onward = end < 0 ? ', held on' : '';
  return `${soundWords(sign.sounds)}, ${tied.join(' tied to ')}${onward}${mannerWords(sign.note)}`;
};

/**
 * A phrase in words, bar by bar, for players who read by ear.
 *
 * @example
 * phraseWords(readPhrase('4:q -4:h.', '4/4').phrase) // 'Bar 1: hole 4 blow, quarter; hole 4 draw, dotted half.'
 */
export const phraseWords = (phrase: Phrase): string =>
  rhythmBars(phrase)
    .map((bar, i) => {
      const words = bar.map((sign, at) => signWords(sign, bar, at)).filter((each) => each !== null);
      return `Bar ${i + 1}: ${words.join('; ')}.`;
    })
    .join(' ');
