import { describe, expect, it } from 'vitest';
import { phraseWords } from '../../../src/core/phrase/phrase-words';
import { readPhrase } from '../../../src/core/phrase/read-phrase';

describe('a call in words', () => {
  it.each([
    ['4:q -4:h.', 'Bar 1: hole 4 blow, quarter; hole 4 draw, dotted half.'],
    [
      "-3'':e 6o:e r:q (4 5):h",
      'Bar 1: hole 3 draw bent two semitones, eighth; hole 6 overblow, eighth; rest, quarter; holes 4 blow and 5 blow, half.',
    ],
    [
      '4:qt -4:qt 5:qt 4:h',
      'Bar 1: hole 4 blow, triplet quarter; hole 4 draw, triplet quarter; hole 5 blow, triplet quarter; hole 4 blow, half.',
    ],
    ['4:h+e r:e r:q', 'Bar 1: hole 4 blow, half tied to eighth; rest, dotted quarter.'],
    [
      'r:h. 4:h r:q r:h',
      'Bar 1: rest, dotted half; hole 4 blow, quarter, held on. Bar 2: held on, quarter; rest, dotted half.',
    ],
  ])('%s', (text, words) => expect(phraseWords(readPhrase(text, '4/4').phrase)).toBe(words));
});
