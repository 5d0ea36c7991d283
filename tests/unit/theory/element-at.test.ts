import { expect, it } from 'vitest';
import { elementAt } from '../../../src/core/theory/element-at';

it('gives the element of a list or typed array, a zero too', () => {
  expect(elementAt(['a', 'b'], 1)).toBe('b');
  expect(elementAt(new Float64Array([0.5, 0]), 1)).toBe(0);
});

it.each([-1, 2, 0.5])('says which element is missing: %s', (index) => {
  expect(() => elementAt(['a', 'b'], index)).toThrow(new RangeError(`no element ${index} in a list of 2`));
});
