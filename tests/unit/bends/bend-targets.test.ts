import { describe, expect, it } from 'vitest';
import { exercisesFor } from '../../../src/core/bends/bend-exercise';
import { bendTargets } from '../../../src/core/bends/bend-targets';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';

describe('the order of bends', () => {
  it('is the teachers’: 4 and 6 draw, 1, 2, 3 with its three steps, blow bends, overblow 6 before 5 and 4', () => {
    // Which comes first and last: dummies.com, articles 203416 and 146600; the bends themselves: Wikipedia, "Richter-tuned harmonica".
    const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(7), octave: 0 });
    expect(bendTargets(harp).map(soundId).join(' ')).toBe(
      "4D' 6D' 1D' 2D'' 2D' 3D''' 3D'' 3D' 8B' 9B' 10B'' 10B' 6OB 5OB 4OB 3OB 2OB 1OB 7OD 8OD 9OD 10OD",
    );
  });

  it('leaves nothing out on any tuning, and natural notes alone', () => {
    for (const tuning of TUNINGS) {
      const harp = buildHarp({ tuning, key: asPitchClass(2), octave: 0 });
      const bent = harp.sounds.filter(({ technique }) => technique !== 'natural').map(soundId);
      expect(bendTargets(harp).map(soundId).sort()).toEqual(bent.sort());
    }
  });

  it('asks for no slide into an overbend', () => {
    expect(exercisesFor({ technique: 'overbend' })).toEqual(['hold', 'cold']);
    expect(exercisesFor({ technique: 'bend' })).toContain('slide');
  });
});
