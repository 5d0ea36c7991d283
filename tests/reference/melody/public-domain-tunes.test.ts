/**
 * Tunes in the public domain, as notes only: where the program finds them on a harp against what is commonly done.
 * The theme of the choral finale of 1824 and a hymn tune in `The Southern Harmony` (1835); both are typed from memory.
 */
import { describe, expect, it } from 'vitest';
import { NATURAL_NOTES } from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { abcMelody } from '../../../src/core/melody/abc-melody';
import { harpsForMelody } from '../../../src/core/melody/melody-harps';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { abcSteps } from '../../helpers/abc-reading';

const FINALE = 'X:1\nM:4/4\nL:1/4\nK:C\neefg|gfed|ccde|e>dd2|\neefg|gfed|ccde|d>cc2|]\n';
const HYMN = 'X:1\nM:3/4\nL:1/4\nK:G\nD|G2 B/G/|B2 A|G2 E|D2 D|G2 B/G/|B2 A|d3-|d2|]\n';

const melodyOf = (source: string) => {
  const melody = abcMelody(source);
  if (typeof melody === 'string') throw new Error(melody);
  return melody;
};

const harpsFor = (source: string) => {
  const { notes, meter, tonic } = melodyOf(source);
  return harpsForMelody(notes, { tuning: RICHTER, technique: NATURAL_NOTES, meter, tonic });
};

const SCALE = [0, 2, 4, 5, 7, 9, 11];

/** Both tunes have no signs, and none of the notes their signatures alter. */
const keyOf = (step: number): number => {
  const octave = Math.floor(step / 7);
  return 60 + 12 * octave + (SCALE[step - 7 * octave] ?? 0);
};

describe.each([
  ['the finale', FINALE],
  ['the hymn', HYMN.replace('d3-|d2|]', 'd3|d2|]')],
])('%s', (_, source) => {
  it('has the notes and lengths that a second reader (abcjs) finds', () => {
    const own = melodyOf(source).notes.flatMap(({ key, length }) => (key === null ? [] : [[key, length]]));
    expect(own).toEqual(abcSteps(source).map(([step, length]) => [keyOf(step), 1920 * length]));
  });
});

describe('where they lie', () => {
  it('puts the finale on the harp of its key, first position, holes 4 to 6 (common practice, no source)', () => {
    const [best] = harpsFor(FINALE);
    expect(best).toMatchObject({
      harpKey: 0,
      position: 1,
      octaves: 0,
      missing: [],
      difficulty: expect.any(Number),
    });
    expect(best && printPhrase(best.phrase, 'signs').split('|')[0]).toBe('5:q 5 -5 6 ');
  });

  it('has the hymn without bends in first and second position (common practice, no source: it is taught in both)', () => {
    const bare = harpsFor(HYMN).filter(({ missing }) => missing.length === 0);
    expect(bare.map(({ position }) => position)).toEqual(expect.arrayContaining([1, 2]));
  });
});
