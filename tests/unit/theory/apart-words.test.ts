import { describe, expect, it } from 'vitest';
import { apartWords } from '../../../src/core/theory/apart-words';

describe('how far apart two things are in time', () => {
  const words = { earlier: 'before', later: 'after' };

  it.each([
    [0.113, 1, '113 ms after'],
    [-0.019, 1, '19 ms before'],
    [-0.0004, 1, '0 ms after'],
    [-0.038, 5, '40 ms before'],
    [0.012, 5, '10 ms after'],
  ])('is said in words: %s s', (seconds, step, said) => {
    expect(apartWords(seconds, words, step)).toBe(said);
  });
});
