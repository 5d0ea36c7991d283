import { describe, expect, it } from 'vitest';
import { addTap, tappedTempo } from '../../../src/core/settings/tap-tempo';
import { asEpochMs, type EpochMs } from '../../../src/core/theory/units';

const tapAll = (times: readonly number[]): readonly EpochMs[] =>
  times.reduce<readonly EpochMs[]>((taps, ms) => addTap(taps, asEpochMs(ms)), []);

describe('tapped tempo', () => {
  it.each([
    ['needs two taps', [0], null],
    ['takes the mean gap', [0, 480, 1000, 1500], 120],
    ['starts again after a long pause', [0, 500, 9000, 9600], 100],
    ['starts anew with a gap of another tempo', [0, 400, 800, 1200, 1900], 86],
    ['goes on with the new tempo', [0, 400, 800, 1200, 1900, 2600, 3300], 86],
    ['goes faster at once', [0, 700, 1400, 1800, 2200], 150],
    ['bears an unsteady hand', [0, 400, 880, 1280], 141],
    ['stays within reach', [0, 100, 200], 280],
    ['forgets old taps', [0, 1000, 2000, 2500, 3000, 3500, 4000, 4500, 5000, 5500], 120],
  ])('%s', (_, times, tempo) => {
    expect(tappedTempo(tapAll(times))).toBe(tempo);
  });
});
