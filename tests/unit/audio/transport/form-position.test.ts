import { describe, expect, it } from 'vitest';
import {
  formPositionAt,
  sectionInstead,
  ticksOfFormPosition,
} from '../../../../src/audio/transport/form-position';
import type { Section } from '../../../../src/core/arranger/program';
import { plainProgram, plainSections } from '../../../helpers/plain-sections';

const section = (...args: Parameters<typeof plainSections>): Section => {
  const found = plainSections(...args);
  if (found === null) throw new Error('no such section');
  return found;
};

describe('place in the form', () => {
  it.each([
    ['start', 0, { index: 0, number: 0, fraction: 0 }],
    ['middle of bar 2', 1920 + 960, { index: 1, number: 1, fraction: 0.5 }],
    ['last bar', 11 * 1920, { index: 11, number: 11, fraction: 0 }],
  ] as const)('%s', (_, ticks, place) => {
    expect(formPositionAt(section(plainProgram(12, 120), 1, 0), ticks)).toEqual(place);
  });

  it('keeps numbers when a chorus was entered in its middle', () => {
    const entered = section(plainProgram(12, 120), 1, 8);
    expect(formPositionAt(entered, 1920)).toEqual({ index: 1, number: 9, fraction: 0 });
    expect(ticksOfFormPosition(entered, { index: 0, number: 10, fraction: 0.5 })).toBe(2 * 1920 + 960);
  });

  it.each([
    ['the same bar in a form of equal length', 12, 9, 9],
    ['the same bar in a longer form', 16, 9, 9],
    ['the bar number modulo the bars of a shorter form', 8, 9, 1],
    ['the first bar for the first number beyond', 8, 8, 0],
  ] as const)('finds %s', (_, bars, from, to) => {
    const target = section(plainProgram(bars, 120), 1, 0);
    expect(ticksOfFormPosition(target, { index: from, number: from, fraction: 0.25 })).toBe(to * 1920 + 480);
  });
});

describe('section instead of another', () => {
  const counted = plainProgram(12, 120, { choruses: 3 });
  const cases = [
    ['the same when nothing moved', counted, 2, 2],
    ['one earlier when the count-in is gone', plainProgram(12, 120, { choruses: 3, countIn: 0 }), 2, 1],
    ['the first chorus for a count-in that is gone', plainProgram(12, 120, { countIn: 0 }), 0, 0],
    ['the last chorus when fewer are asked for', plainProgram(12, 120, { choruses: 1 }), 3, 1],
  ] as const;
  it.each(cases)('%s', (_, changed, from, to) => {
    const found = sectionInstead(plainSections, changed, section(counted, from, 0), 0);
    expect(found?.index).toBe(to);
  });
});
