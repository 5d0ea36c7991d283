import { describe, expect, it } from 'vitest';
import { harpKind } from '../../../src/core/bends/bend-results';
import { buildChart } from '../../../src/core/chart/build-chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { NATURAL_NOTES } from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';
import { itemList } from '../../../src/core/today/item-list';
import type { PracticeItem } from '../../../src/core/today/practice-item';

const stand = {
  harp: buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 }),
  technique: { ...NATURAL_NOTES, drawBends: true },
  chart: buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }),
  position: 2,
  songs: [],
  phrases: [],
} as const;

describe('what there is to practise', () => {
  it('is one of each kind in turn, and every one of them', () => {
    const items = itemList(stand, []);
    const kinds = items.map(({ exercise }) => exercise.kind);
    expect(kinds.slice(0, 6)).toEqual(['tone', 'bend', 'scale', 'tone', 'bend', 'scale']);
    // The third and seventh of I7, IV7 and V7; eight draw bends of a C harp; three scales.
    const count = (kind: string): number => kinds.filter((each) => each === kind).length;
    expect([count('tone'), count('bend'), count('scale'), items.length]).toEqual([6, 8, 3, 17]);
  });

  it('keeps what is known of it, also of what is out of reach now, but nothing of another harp', () => {
    const [tone] = itemList(stand, []);
    if (tone === undefined) throw new Error('There is nothing to practise');
    const memory = { stability: 3, difficulty: 5, last: 20_000, due: 20_003, times: 2, lapses: 0, passes: 2 };
    const overblow = (kind: string): PracticeItem => ({
      id: `bend 6OB ${kind}`,
      name: '6 overblow',
      exercise: { kind: 'bend', sound: '6OB', harpKind: kind },
      memory,
    });
    const [here, elsewhere] = [overblow(harpKind(stand.harp)), overblow('of another harp')];
    const items = itemList(stand, [{ ...tone, memory }, here, elsewhere]);
    expect(items.filter((item) => item.memory !== null)).toEqual([{ ...tone, memory }, here]);
    expect(items.at(-1)).toEqual(here);
  });
});
