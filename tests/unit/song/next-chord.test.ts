import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import type { ShownBars } from '../../../src/core/song/bar-view';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { nextChord } from '../../../src/core/song/next-chord';
import { type Tune, tuneFor } from '../../../src/core/song/tune';
import { restingViews } from '../../../src/core/song/views';
import { asPitchClass } from '../../../src/core/theory/units';

const tuneIn = (key: number, formId: string): Tune => {
  const settings = { ...DEFAULT_SETTINGS, formId };
  return tuneFor(settings, chartFor(settings, [], asPitchClass(key)));
};
/** Twelve bars in G: G7 four times, C7 twice, G7 twice, D7 C7 G7 G7. */
const tune = tuneIn(7, 'standard');
const BAR = 1920;

const heardAt = (bar: number, next: ShownBars['next']): ShownBars => ({
  now: { tune, bar, formBar: bar, kind: 'chorus', chorus: 0, tempo: null },
  next,
});
const within = (bar: number): ShownBars =>
  heardAt(bar, { tune, bar: bar + 1, formBar: bar + 1, kind: 'chorus', chorus: 0, tempo: null });
const said = (shown: ShownBars) => {
  const found = nextChord(shown, 0);
  return found && [found.fit.chord.symbol, found.after / BAR];
};

describe('the next chord', () => {
  it('looks over bars that hold the chord to the one that changes it', () => {
    expect([0, 3, 4, 6, 8].map((bar) => said(within(bar)))).toEqual([
      ['C7', 4],
      ['C7', 1],
      ['G7', 2],
      ['D7', 2],
      ['C7', 1],
    ]);
  });

  it('goes round the form while the band rests', () => {
    expect(said(restingViews(tune, 10))).toEqual(['C7', 6]);
  });

  it('knows none where the chord stays to the end of what is heard', () => {
    expect(said(within(10))).toBeNull();
    expect(said(heardAt(11, null))).toBeNull();
  });

  it('goes on into the next chorus from the last bar', () => {
    const again = { tune, bar: 0, formBar: 0, kind: 'chorus', chorus: 1, tempo: null } as const;
    expect(said(heardAt(11, again))).toEqual(['C7', 5]);
  });

  it('counts the same chord on another harp as a change', () => {
    const other = tuneIn(0, 'standard');
    const next = { tune: other, bar: 4, formBar: 4, kind: 'chorus', chorus: 1, tempo: null } as const;
    const found = nextChord(heardAt(11, next), 0);
    expect([found?.tune.harp.key, found?.after]).toEqual([other.harp.key, BAR]);
  });

  it('finds the second chord of a bar before any other bar', () => {
    const split = tuneIn(7, 'jazz-swing');
    const bar = split.fit.bars.findIndex(({ chords }) => chords.length === 2);
    const now = { tune: split, bar, formBar: bar, kind: 'chorus', chorus: 0, tempo: null } as const;
    expect(nextChord({ now, next: null }, 0)?.after).toBe(BAR / 2);
  });
});
