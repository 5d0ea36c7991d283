import { describe, expect, it } from 'vitest';
import { createReattack } from '../../../src/core/hearing/reattack';

interface Dip {
  /** dB of the reed, of all that sounds and of its highs. */
  readonly reed: number;
  readonly whole?: number;
  readonly bright?: number;
  /** Seconds down, and up. */
  readonly slope?: number;
  /** dB after it re before. */
  readonly after?: number;
  readonly hz?: number;
}

/** A reed at −20 dB whose level dips around 0.3 s. */
const listen = ({
  reed,
  whole = reed,
  bright = reed,
  slope = 0.015,
  after = 0,
  hz = 500,
}: Dip): readonly number[] => {
  const reattack = createReattack();
  const found: number[] = [];
  for (let time = 0; time < 0.6; time += 0.0025) {
    const share = Math.max(0, 1 - Math.abs(time - 0.3) / slope);
    const louder = time > 0.3 ? after : 0;
    const at = reattack.step({
      time,
      level: -20 + louder - reed * share,
      whole: -20 + louder - whole * share,
      bright: -20 + louder - bright * share,
      frequency: hz,
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

  it('comes back the sooner the higher the reed', () => {
    expect(listen({ reed: 13, slope: 0.04, hz: 200 })).toHaveLength(1);
    expect(listen({ reed: 13, slope: 0.04, hz: 2000 })).toEqual([]);
  });

  it('is not much softer than it was before, as the tail of a room is', () => {
    expect(listen({ reed: 12, after: -4 })).toHaveLength(1);
    expect(listen({ reed: 8, after: -22 })).toEqual([]);
  });

  it('is no slow swell, as of hands that open and close', () => {
    expect(listen({ reed: 10, slope: 0.08 })).toEqual([]);
    expect(listen({ reed: 10, slope: 0.02 })).toHaveLength(1);
  });
});

describe('a rest in a room', () => {
  /** Levels of reed and highs that go straight from one point to the next. */
  type Point = readonly [time: number, reed: number, bright: number];
  const between = (points: readonly Point[], time: number): { level: number; bright: number } => {
    const next = points.findIndex(([at]) => at > time);
    const [one, other] = [points.at(next - 1), points.at(next)];
    if (one === undefined || other === undefined || next <= 0) throw new Error('no such time');
    const share = (time - one[0]) / (other[0] - one[0]);
    return { level: one[1] + share * (other[1] - one[1]), bright: one[2] + share * (other[2] - one[2]) };
  };
  const hear = (...points: readonly Point[]): readonly number[] => {
    const reattack = createReattack();
    return Array.from({ length: 200 }, (_, i) => {
      const time = 0.0025 * i;
      const { level, bright } = between([[0, -22, -27], ...points, [1, -22, -27]], time);
      return reattack.step({ time, level, whole: level, bright, frequency: 930 });
    }).filter((at) => at !== null);
  };

  it('in which an echo takes the rest of the note out and lets it up again without highs begins nothing', () => {
    expect(hear([0.2, -22, -27], [0.208, -32, -41], [0.22, -24, -45], [0.4, -50, -67])).toEqual([]);
  });

  it('ends where the reed speaks, not where the room wavered before', () => {
    const found = hear(
      [0.2, -22, -27],
      [0.215, -41, -46],
      [0.225, -37, -47],
      [0.24, -40, -48],
      [0.244, -39.5, -49],
      [0.256, -22, -28],
    );
    expect(found).not.toEqual([]);
    for (const at of found) expect(Math.abs(at - 0.244)).toBeLessThan(0.005);
  });
});
