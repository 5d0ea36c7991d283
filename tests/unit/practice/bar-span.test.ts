import { expect, it } from 'vitest';
import { spanAround } from '../../../src/core/practice/bar-span';

it('finds the stretch a bar stands in', () => {
  const turns = ['listen', 'listen', 'answer', 'answer', 'answer', 'listen'];
  expect(turns.map((_, bar) => spanAround(turns, bar))).toEqual([
    { from: 0, to: 1 },
    { from: 0, to: 1 },
    { from: 2, to: 4 },
    { from: 2, to: 4 },
    { from: 2, to: 4 },
    { from: 5, to: 5 },
  ]);
});
