import { describe, expect, it } from 'vitest';
import { linesInView } from '../../../src/ui/stage/lines-in-view';

const lines = (count: number, chords = 4): readonly number[] => Array.from({ length: count }, () => chords);

describe('the lines of a form that are shown', () => {
  it('are all of them where there is room', () => {
    for (const now of [0, 3, 5]) expect(linesInView(lines(6), now, 28)).toEqual([0, 5]);
    expect(linesInView(lines(15, 1), 14, 28)).toEqual([0, 14]);
  });

  it('of a long form are those around the line being heard, and as many at its ends', () => {
    expect(linesInView(lines(64), 0, 28)).toEqual([0, 6]);
    expect(linesInView(lines(64), 30, 28)).toEqual([27, 33]);
    expect(linesInView(lines(64), 63, 28)).toEqual([57, 63]);
  });

  it('are that line alone where it has more chords than there is room for', () => {
    expect(linesInView([30, 1, 30], 0, 28)).toEqual([0, 0]);
    expect(linesInView([], 0, 28)).toEqual([0, 0]);
  });
});
