import { chordParserFactory } from 'chord-symbol';
import { describe, expect, it } from 'vitest';
import { readSymbol } from '../../../src/core/theory/chords';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const parse = chordParserFactory();

const classes = (semitones: readonly number[]): string =>
  [...new Set(semitones.map((each) => each % 12))].sort((a, b) => a - b).join(' ');

const theirs = (symbol: string): string | null => {
  const parsed = parse(symbol);
  return 'normalized' in parsed ? classes(parsed.normalized.semitones) : null;
};

const ours = (symbol: string): string | null => {
  const chord = readSymbol(symbol);
  return chord === null ? null : classes(chord.tones.map(({ pitchClass }) => pitchClass));
};

const KINDS = ['', 'm', '-', 'maj', 'M', 'Δ', 'dim', '°', 'ø', 'aug', '+', 'mMaj', 'm(maj7)'];
const NUMBERS = ['', '6', '69', '7', '9', '11', '13'];
const FIFTHS = ['b5', '#5', '(b5)', '(#5)', '+5'];
const TENSIONS = ['b9', '#9', '#11', 'b13', '(13)', '(9)', '(b9,#11)', 'add9', 'add11', 'add13'];
const SIGNS = ['', ...FIFTHS, ...TENSIONS, 'sus', 'sus2', 'no5', 'no3'];

/** Where handbooks and libraries differ, and we stand otherwise than chord-symbol on purpose. */
const DIFFERENT: readonly (readonly [RegExp, string])[] = [
  [/^C(?:dim|°).*(?:9|11)/, 'the ninth and eleventh stand on a diminished seventh'],
  [/^C(?:m|-).*13/, 'the thirteenth leaves the eleventh out, as tonal’s m13 does'],
  [/^C(?:maj|M)(?!\d).*#11/, 'maj♯11 is the lydian chord with its seventh, as tonal’s maj♯4 is'],
  [/6.*\(9\)/, 'a ninth in brackets makes no dominant of a sixth chord'],
  [/^CmMaj(?!7|9|1[13])/, 'minor with maj asks for a major seventh whether or not a number follows'],
  [/Δ6/, 'the triangle before a six asks for no seventh beside a 69'],
];

const SPELLINGS = KINDS.flatMap((kind) =>
  NUMBERS.flatMap((number) =>
    SIGNS.flatMap((first) => SIGNS.map((second) => `C${kind}${number}${first}${second}`)),
  ),
).filter((text) => !/^C[#b]/.test(text));

// Second opinion: the chord-symbol library 4.0.0 (MIT), which reads symbols by rules of its own.
describe('chord symbols in every order of their parts', () => {
  it(
    'hold the notes chord-symbol finds, wherever both read them',
    () => {
      const stride = Math.max(1, Math.round(SPELLINGS.length / soakRuns(10)));
      let compared = 0;
      const wrong: string[] = [];
      for (let i = 0; i < SPELLINGS.length; i += stride) {
        const text = SPELLINGS[i] ?? '';
        const [we, they] = [ours(text), theirs(text)];
        if (we === null || they === null || DIFFERENT.some(([pattern]) => pattern.test(text))) continue;
        compared += 1;
        if (we !== they) wrong.push(`${text}: ${we}, not ${they}`);
      }
      expect(wrong).toEqual([]);
      expect(compared).toBeGreaterThan(SPELLINGS.length / stride / 4);
    },
    SOAK_TIMEOUT,
  );
});
