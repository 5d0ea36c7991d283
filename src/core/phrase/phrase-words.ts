import { spokenHole } from '../harp/tab';
import type { Phrase, PhraseSound } from './phrase';
import { type RhythmSign, rhythmBars } from './rhythm-signs';

const valueWords = ({ value, dotted, triplet }: RhythmSign): string =>
  `${dotted ? 'dotted ' : ''}${triplet ? 'triplet ' : ''}${value}`;

const soundWords = (sounds: readonly PhraseSound[]): string =>
  `${sounds.length === 1 ? 'hole' : 'holes'} ${sounds.map(spokenHole).join(' and ')}`;

/** A note with the values tied to it; null where the sign only goes on with what was before it. */
const signWords = (sign: RhythmSign, bar: readonly RhythmSign[], at: number): string | null => {
  if (sign.rest) return `rest, ${valueWords(sign)}`;
  if (sign.sounds.length === 0) return at === 0 ? `held on, ${valueWords(sign)}` : null;
  const end = bar.findIndex((each, i) => i >= at && !each.tied);
  const tied = bar.slice(at, end < 0 ? bar.length : end + 1).map(valueWords);
  const onward = end < 0 ? ', held on' : '';
  return `${soundWords(sign.sounds)}, ${tied.join(' tied to ')}${onward}`;
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
