import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import { asBpm } from '../../../src/core/theory/units';
import { sectionOf } from '../../helpers/score-events';
import { testChart, testProgram } from '../../helpers/test-charts';

const inG = (plan: Partial<Plan> = {}) =>
  testProgram('shuffle', { plan: { countInBars: 1, choruses: null, ...plan } });
const inD = (plan: Partial<Plan> = {}) =>
  testProgram('swing', {
    chart: testChart('standard', 2),
    tempo: 180,
    plan: { countInBars: 1, choruses: null, ...plan },
  });

describe('a program that turns into another', () => {
  const program = { ...inG(), later: { from: 1, program: inD() } };

  it('plays itself up to the chorus and the other one from there, in one order of sections', () => {
    const played = [0, 1, 2, 3].map((index) => sectionOf(program, index));
    expect(
      played.map(({ index, kind, chorus, chart, tempo }) => [index, kind, chorus, chart.key, tempo[0]?.bpm]),
    ).toEqual([
      [0, 'count-in', 0, 7, inG().tempo],
      [1, 'chorus', 0, 7, inG().tempo],
      [2, 'chorus', 1, 2, 180],
      [3, 'chorus', 2, 2, 180],
    ]);
    expect(played[2]?.score).toEqual(sectionOf(inD(), 2).score);
  });

  it('brings the other one’s instruments with it', () => {
    const { bass, chords, kit } = inD().style;
    expect([1, 2].map((index) => sectionOf(program, index).instruments)).toEqual([
      undefined,
      { bass, chords, kit },
    ]);
  });

  it('leaves the chorus before the change as it was where the key stays, so that nothing heard now is cut', () => {
    const faster = { ...inG(), later: { from: 1, program: { ...inG(), tempo: asBpm(150) } } };
    expect(sectionOf(faster, 1)).toEqual(sectionOf(inG(), 1));
  });

  it('leads into the new key at the end of the chorus before it, and leaves its other bars as they were', () => {
    const bars = (of: typeof program | ReturnType<typeof inG>) =>
      sectionOf(of, 1).chart.bars.map(({ chords }) => chords.map(({ chord }) => chord.symbol));
    const [before, after] = [bars(inG()), bars(program)];
    expect(after.slice(0, -1)).toEqual(before.slice(0, -1));
    expect(after.at(-1)?.at(-1)).toBe('A7');
    const { chart, score } = sectionOf(program, 1);
    const last = chart.bars.at(-1)?.chords.at(-1);
    const bass = score.events.filter(({ part, at }) => part === 'bass' && at >= (last?.at ?? 0));
    // The bass takes the new key's five there (A, 9 above C), or comes to it from a neighbour.
    expect(bass.some(({ pitch }) => pitch % 12 === 9)).toBe(true);
  });

  it('finds its place where the other one has other sections before it', () => {
    const repeating = inG({ repeat: { from: 0, to: 3 }, countBetween: true });
    const places = [3, 4, 5].map((index) =>
      sectionOf({ ...repeating, later: { from: 2, program: inD({ intro: 'pickup' }) } }, index),
    );
    expect(places.map(({ index, kind, chorus, chart }) => [index, kind, chorus, chart.key])).toEqual([
      [3, 'chorus', 1, 7],
      [4, 'chorus', 2, 2],
      [5, 'chorus', 3, 2],
    ]);
  });

  it('ends as planned where it ends before the change', () => {
    const short = { ...inG({ choruses: 1 }), later: { from: 1, program: inD({ choruses: 1 }) } };
    expect([2, 3].map((index) => sectionAt(short, index)?.kind)).toEqual(['ending', undefined]);
    expect(sectionOf(short, 2).chart.key).toBe(7);
  });
});
