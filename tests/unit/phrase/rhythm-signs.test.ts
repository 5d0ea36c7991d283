import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barTicks, METERS } from '../../../src/core/chart/build-chart';
import type { MeterName } from '../../../src/core/chart/chart';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { type RhythmSign, rhythmBars } from '../../../src/core/phrase/rhythm-signs';

const barsOf = (text: string, meter: MeterName = '4/4') => rhythmBars(readPhrase(text, meter).phrase);
const word = ({ value, dotted, triplet, rest, tied }: RhythmSign): string =>
  `${dotted ? 'dotted ' : ''}${triplet ? 'triplet ' : ''}${value}${rest ? ' rest' : ''}${tied ? '~' : ''}`;
const words = (text: string, meter?: MeterName) => barsOf(text, meter).map((signs) => signs.map(word));

describe('how a call is written down', () => {
  // The values and what a dot or a triplet makes of them: Open Music Theory, "Rhythmic and Rest Values".
  it('writes plain, dotted and triplet values', () => {
    expect(words('4:h 4:q. 4:e')).toEqual([['half', 'dotted quarter', 'eighth']]);
    expect(words('4:qt 4:qt 4:qt r:h')[0]?.slice(0, 3)).toEqual([
      'triplet quarter',
      'triplet quarter',
      'triplet quarter',
    ]);
  });

  it('fills a bar with rests, and gives a silent one the whole-bar rest in any meter', () => {
    expect(words('4:q r:q 4:h')).toEqual([['quarter', 'quarter rest', 'half']]);
    expect(words('4:h. | r:h. | 4:h.', '3/4')[1]).toEqual(['whole rest']);
  });

  it('ties what goes over a bar line or has no sign of its own', () => {
    expect(words('r:h. 4:h r:q r:h')).toEqual([
      ['dotted half rest', 'quarter~'],
      ['quarter', 'dotted half rest'],
    ]);
    expect(words('4:h+e r:e r:q')[0]?.slice(0, 2)).toEqual(['half~', 'eighth']);
  });

  it('ties nine eighths of a compound bar as dotted values', () => {
    expect(words('4:h.+q. r:q.', '12/8')).toEqual([
      ['dotted half~', 'dotted quarter', 'dotted quarter rest'],
    ]);
  });

  // "Beams ... group notes by beat" (Open Music Theory, "Simple Meter and Time Signatures").
  it('beams short notes beat by beat', () => {
    const [bar = []] = barsOf('4:e 5:e 4:e 5:e 6:q 4:q');
    expect(bar.map(({ beam }) => beam)).toEqual([0, 0, 1, 1, null, null]);
    const [compound = []] = barsOf('4:e 5:e 6:e 4:q 5:e 6:h.', '12/8');
    expect(compound.map(({ beam }) => beam)).toEqual([0, 0, 0, null, null, null]);
  });

  it('accounts for every tick of a phrase, whatever its lengths', () => {
    const lengths = fc.array(
      fc.constantFrom('w', 'h', 'h.', 'q', 'q.', 'e', 'e.', 's', 'qt', 'et', 'h+e', '777'),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(lengths, fc.constantFrom<MeterName[]>('4/4', '3/4', '6/8', '12/8'), (each, meter) => {
        const { phrase } = readPhrase(
          each.map((length, i) => `${i % 3 === 2 ? 'r' : '4'}:${length}`).join(' '),
          meter,
        );
        const bar = barTicks(METERS[meter]);
        const signs = rhythmBars(phrase);
        expect(signs).toHaveLength(Math.ceil(phrase.length / bar));
        let at = 0;
        for (const sign of signs.flat()) {
          expect(sign.at).toBeCloseTo(at, 6);
          at = sign.at + sign.length;
        }
        expect(at).toBeCloseTo(phrase.length, 6);
        const heads = signs.flat().filter(({ sounds }) => sounds.length > 0);
        expect(heads.map(({ at: start }) => start)).toEqual(phrase.notes.map(({ at: start }) => start));
      }),
    );
  });
});
