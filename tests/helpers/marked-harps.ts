import fc from 'fast-check';
import { type MarkedSound, markSounds } from '../../src/core/fit/mark-sounds';
import { buildHarp, HOLES } from '../../src/core/harp/build-harp';
import type { Tuning } from '../../src/core/harp/harp';
import { EVERY_TECHNIQUE } from '../../src/core/harp/reach';
import { TUNINGS } from '../../src/core/harp/tunings';
import { chordOf } from '../../src/core/theory/chords';
import { asPitchClass } from '../../src/core/theory/units';

/** Everything a harp of key C gives, as marked over a G7. */
export const marksOf = (tuning: Tuning, valved: readonly number[] = []): readonly MarkedSound[] =>
  markSounds({
    harp: buildHarp({ tuning, key: asPitchClass(0), octave: 0, valved }),
    chord: chordOf({ root: 'G', quality: '7' }),
    tonic: 'G',
    scale: null,
    technique: EVERY_TECHNIQUE,
  });

const reed = fc.integer({ min: 20, max: 45 });

/** Tunings of the list, retuned by the reed, with any holes valved, and with up to fourteen holes. */
export const anyMarks: fc.Arbitrary<readonly MarkedSound[]> = fc
  .record({
    base: fc.constantFrom(...TUNINGS),
    more: fc.array(fc.tuple(reed, reed), { maxLength: HOLES.most - HOLES.fewest }),
    retuned: fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 28, maxLength: 28 }),
    valved: fc.uniqueArray(fc.integer({ min: 1, max: 14 })),
  })
  .map(({ base, more, retuned, valved }) => {
    const at = (index: number): number => retuned[index] ?? 0;
    const blow = [...base.blow, ...more.map(([blown]) => blown)].map((pitch, i) => pitch + at(2 * i));
    const draw = [...base.draw, ...more.map(([, drawn]) => drawn)].map((pitch, i) => pitch + at(2 * i + 1));
    return marksOf({ id: 'own', name: 'Hall harp', blow, draw }, valved);
  });
