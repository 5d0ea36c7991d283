import { describe, expect, it } from 'vitest';
import { createReattack } from '../../../src/core/hearing/reattack';

interface Dip {
  /** dB of the reed, of all that sounds and of its highs. */
  readonly reed: number;
  readonly whole?: number;
  readonly bright?: number;
  readonly swing?: number;
  /** Seconds down, and up. */
  readonly slope?: number;
}

/** A reed at −20 dB whose level dips around 0.3 s. */
const listen = ({ reed, whole = reed, bright = reed, swing = 0, slope = 0.015 }: Dip): readonly number[] => {
  const reattack = createReattack();
  const found: number[] = [];
  for (let time = 0; time < 0.6; time += 0.0025) {
    const share = Math.max(0, 1 - Math.abs(time - 0.3) / slope);
    const at = reattack.step({
      time,
      level: -20 - reed * share,
      whole: -20 - whole * share,
      bright: -20 - bright * share,
      swing,
    });
    if (at !== null) found.push(at);
  }
  return found;
};

describe('a reed sounded again', () => {
  it('is found where its level and that of all that sounds fall and rise', () => {
    const [at, ...more] = listen({ reed: 10 });
    expect(more).toEqual([]);
    expect(Math.abs(at - 0.3)).toBeLessThan(0.012);
  });

  it('is found in a shallow dip where the highs are cut', () => {
    expect(listen({ reed: 5, bright: 14 })).toHaveLength(1);
  });

  it('is not a small dip, nor one that the whole sound does not share', () => {
    expect(listen({ reed: 4 })).toEqual([]);
    expect(listen({ reed: 10, whole: 2, bright: 2 })).toEqual([]);
  });

  it('takes a deeper dip where the pitch trembles, as vibrato moves the level too', () => {
    expect(listen({ reed: 8 })).toHaveLength(1);
    expect(listen({ reed: 8, swing: 35 })).toEqual([]);
    expect(listen({ reed: 20, swing: 35 })).toHaveLength(1);
  });

  it('is no slow swell, as of hands that open and close', () => {
    expect(listen({ reed: 10, slope: 0.08 })).toEqual([]);
    expect(listen({ reed: 10, slope: 0.02 })).toHaveLength(1);
  });
});
