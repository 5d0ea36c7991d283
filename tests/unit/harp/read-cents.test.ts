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
    ['101', '“101” is too far off. Type cents from −100 to 100.'],
    ['-', '“-” is not a number. Type cents from −100 to 100.'],
    ['', '“” is not a number. Type cents from −100 to 100.'],
    ['flat', '“flat” is not a number. Type cents from −100 to 100.'],
    ['1e2', '“1e2” is not a number. Type cents from −100 to 100.'],
  ])('reads “%s” as %s', (typed, cents) => {
    expect(readCents(typed)).toBe(cents);
  });
});
