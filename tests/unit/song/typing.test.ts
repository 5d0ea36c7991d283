import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { continuesTyping, endOfChange } from '../../../src/core/song/typing';

describe('what belongs to one go of typing', () => {
  it.each([
    ['the next letter of a word', 'G', 'Gm', 'Gm7', true],
    ['the blank behind a word', 'C', 'C7', 'C7 ', true],
    ['a bar line behind a blank', 'C', 'C7 ', 'C7 |', true],
    ['the first letter of the next word', '', 'C7 ', 'C7 F', false],
    ['a letter somewhere else', 'C7 F7', 'C7 F79', 'Cm7 F79', false],
    ['one more letter taken away backwards', 'C7b9', 'C7b', 'C7', true],
    ['one more letter taken away forwards', 'abC7', 'bC7', 'C7', true],
    ['a letter taken away somewhere else', 'C7b9 | F7', 'C7b | F7', 'C7b | F', false],
    ['a letter after taking one away', 'C7b', 'C7', 'C79', false],
    ['a pasted word', 'C7', 'C7 ', 'C7 F7', false],
    ['a whole new text', 'C7 F7', 'C7 F79', 'D7 G79', false],
  ] as const)('%s', (_, before, present, next, expected) => {
    expect(continuesTyping(before, present, next)).toBe(expected);
  });

  it('never throws, and puts the caret inside the text', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.string(), (before, present, next) => {
        continuesTyping(before, present, next);
        const caret = endOfChange(before, present);
        expect(caret).toBeGreaterThanOrEqual(0);
        expect(caret).toBeLessThanOrEqual(present.length);
      }),
    );
  });

  it.each([
    ['C7 | F7', 'C7 | Bb7', 7],
    ['C7', '', 0],
    ['G7 |  | D7', 'G7 | C7 | D7', 7],
  ])('the caret goes behind what changed from %j to %j', (before, after, expected) => {
    expect(endOfChange(before, after)).toBe(expected);
  });
});
