import { expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { programOf } from '../../../src/core/song/song-program';
import { tuneFor } from '../../../src/core/song/tune';
import { asPitchClass } from '../../../src/core/theory/units';
import { partOf, sectionOf } from '../../helpers/score-events';

const topsOf = (harpKey: number, leaveRoom = true): number => {
  const style = { ...DEFAULT_SETTINGS.style, leaveRoom };
  const plan = { ...DEFAULT_SETTINGS.plan, countInBars: 0 } as const;
  const settings = { ...DEFAULT_SETTINGS, harpKey: asPitchClass(harpKey), style, plan };
  const tune = tuneFor(settings, chartFor(settings, []));
  const program = programOf({ settings, tune, lastChorus: null, ownCharts: [] });
  const pitches = [0, 2, 5].flatMap((chorus) => partOf(sectionOf(program, chorus), 'chords'));
  return Math.max(...pitches.map(({ pitch }) => pitch));
};

// 2 draw of a harp is a fifth above its 1 blow: G4 on a C harp (1 blow C4), D4 on a G harp (1 blow G3).
// Harp layout: reference tests of the tunings.
it.each([
  [0, 67],
  [7, 62],
  [9, 64],
  [10, 65],
])('with room asked for, chords stay below 2 draw of the harp in hand (key %s)', (harpKey, home) => {
  expect(topsOf(harpKey)).toBeLessThan(home);
});

it('without it they do not', () => {
  expect(topsOf(7, false)).toBeGreaterThan(62);
});
