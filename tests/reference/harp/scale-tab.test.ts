import { describe, expect, it } from 'vitest';
import { scaleTab } from '../../../src/core/fit/scale-tab';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { EVERY_TECHNIQUE } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { RICHTER } from '../../../src/core/harp/tunings';
import { scaleOf } from '../../../src/core/theory/scales';
import { asPitchClass } from '../../../src/core/theory/units';

const C_HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

describe('scales of second position on a C harp, lowest full octave', () => {
  // Degrees: Wikipedia, "Blues scale"; holes worked out by hand from OEIS A291810 and the bend rule of
  // J. Acoust. Soc. Am. 103(4), 1998, doi 10.1121/1.421359.
  it.each([
    ['minor-blues', "2D 3D' 4B 4D' 4D 5D 6B"],
    ['major-blues', "2D 3D'' 3D' 3D 4D 5B 6B"],
    ['mixolydian', "2D 3D'' 3D 4B 4D 5B 5D 6B"],
    ['minor-pentatonic', "2D 3D' 4B 4D 5D 6B"],
  ] as const)('G %s: %s', (id, tab) => {
    const [lowest] = scaleTab({ scale: scaleOf(id, 'G'), harp: C_HARP, technique: EVERY_TECHNIQUE });
    expect(lowest?.up.map(({ sound }) => sound && soundId(sound)).join(' ')).toBe(tab);
  });
});
