import { describe, expect, it } from 'vitest';
import { createReattack } from '../../../src/core/hearing/reattack';

/** A reed at −20 dB whose level dips by so many dB around 0.3 s, down and up within 15 ms each way. */
const listen = (dip: number, { whole = dip, swing = 0 } = {}): readonly number[] => {
  const reattack = createReattack();
  const found: number[] = [];
  for (let time = 0; time < 0.6; time += 0.0025) {
    const share = Math.max(0, 1 - Math.abs(time - 0.3) / 0.015);
    const at = reattack.step({ time, level: -20 - dip * share, whole: -20 - whole * share, swing });
    if (at !== null) found.push(at);
  }
  return found;
};

describe('a reed sounded again', () => {
  it('is found where its level and that of all that sounds fall and rise', () => {
    const [at, ...more] = listen(10);
    expect(more).toEqual([]);
    expect(Math.abs(at - 0.3)).toBeLessThan(0.012);
  });

  it('is not a small dip, nor one that the whole sound does not share', () => {
    expect(listen(5)).toEqual([]);
    expect(listen(10, { whole: 2 })).toEqual([]);
  });

  it('takes a deeper dip where the pitch trembles, as vibrato moves the level too', () => {
    expect(listen(10, { swing: 30 })).toEqual([]);
    expect(listen(20, { swing: 30 })).toHaveLength(1);
  });
});
