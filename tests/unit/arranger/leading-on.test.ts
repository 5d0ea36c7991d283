import { describe, expect, it } from 'vitest';
import { leadingOn } from '../../../src/core/arranger/leading-on';
import type { Chart } from '../../../src/core/chart/chart';
import { testChart } from '../../helpers/test-charts';

const ends = ({ bars }: Chart): string =>
  bars
    .at(-1)
    ?.chords.map(({ chord }) => chord.symbol)
    .join(' ') ?? '';

const lastOf = (chart: Chart) => {
  const bar = chart.bars.at(-1);
  if (bar === undefined) throw new Error('A chart has bars');
  return bar;
};

/** A chart whose last bar is its first chord alone. */
const endingAtHome = (chart: Chart): Chart => {
  const span = chart.bars[0]?.chords[0];
  if (span === undefined) throw new Error('A bar has chords');
  const last = lastOf(chart);
  const { at, length } = last;
  return { ...chart, bars: [...chart.bars.slice(0, -1), { ...last, chords: [{ ...span, at, length }] }] };
};

// The dominant seventh of the coming key before a modulation: Piston, "Harmony", on secondary dominants (from memory).
describe('a chorus before one in another key', () => {
  it('has the new key’s dominant where it led back home', () => {
    const before = testChart('quick-change-turnaround', 7);
    expect(ends(before)).toMatch(/D7$/);
    const after = leadingOn(before, testChart('quick-change-turnaround', 10), true);
    expect(ends(after)).toBe(ends(before).replace(/D7$/, 'F7'));
    expect(after.bars.slice(0, -1)).toEqual(before.bars.slice(0, -1));
    expect(after.length).toBe(before.length);
  });

  it('gives half of a last bar of home to it, and keeps the bar’s length', () => {
    const home = endingAtHome(testChart('standard', 7));
    expect(ends(home)).toBe('G7');
    expect(leadingOn(home, testChart('standard', 0), false), 'which leads to C by itself').toBe(home);
    expect(ends(leadingOn(home, testChart('standard', 2), false))).toBe('G7 A7');
    const { at, length, chords } = lastOf(leadingOn(home, testChart('standard', 2), false));
    expect(chords.reduce((sum, span) => sum + span.length, 0)).toBe(length);
    expect(chords[1]?.at).toBe(at + length / 2);
  });

  it('leaves a chart of the player’s own that does not lead home as it is written, and every chart in one key', () => {
    const before = testChart('standard', 7);
    const home = endingAtHome(before);
    expect(leadingOn(home, testChart('standard', 2), true)).toBe(home);
    expect(leadingOn(before, testChart('jazz-swing', 7), false)).toBe(before);
  });
});
