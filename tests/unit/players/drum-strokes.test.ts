import { expect, it } from 'vitest';
import { STROKES } from '../../../src/core/players/drum-strokes';
import { DRUM_KEYS } from '../../../src/core/score/drum-kit';

it('every lane has four strengths that grow', () => {
  expect(Object.keys(STROKES).sort()).toEqual(Object.keys(DRUM_KEYS).sort());
  for (const { g = 0, o = 0, x = 0, X = 0 } of Object.values(STROKES))
    expect(0 < g && g < o && o < x && x < X).toBe(true);
});
