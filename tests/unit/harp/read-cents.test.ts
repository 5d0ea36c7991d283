import { describe, expect, it } from 'vitest';
import { readCents } from '../../../src/core/harp/read-cents';

describe('readCents', () => {
  it.each([
    ['-9', -9],
    ['−9', -9],
    ['+4', 4],
    [' 12 ', 12],
    ['-2,5', -2.5],
    ['-0', 0],
    ['100', 100],
    ['101', null],
    ['-', null],
    ['', null],
    ['flat', null],
    ['1e2', null],
  ])('reads “%s” as %s', (typed, cents) => {
    expect(readCents(typed)).toBe(cents);
  });
});
