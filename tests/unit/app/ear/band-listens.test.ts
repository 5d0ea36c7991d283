import { describe, expect, it } from 'vitest';
import { createBandListens } from '../../../../src/app/ear/band-listens';
import type { PlacedNote } from '../../../../src/app/ear/place-notes';
import { playheadAt } from '../../../../src/audio/transport/playhead-at';
import { placeSection } from '../../../../src/audio/transport/timeline';
import { FEEL_IDS } from '../../../../src/core/feels/feels';
import { DEFAULT_SETTINGS } from '../../../../src/core/settings/defaults';
import { partOf, sectionOf } from '../../../helpers/score-events';
import { testProgram } from '../../../helpers/test-charts';

describe('a band that listens', () => {
  const open = () => {
    let hear: (placed: PlacedNote) => void = () => {};
    let followed = 0;
    const store = {
      getState: () => own,
      setState: (change: object) => Object.assign(own, change),
    };
    const own: Record<string, unknown> = {
      harpHeard: null,
      settings: { ...DEFAULT_SETTINGS, bandListens: true },
    };
    const listens = createBandListens({ store, orders: { follow: () => (followed += 1) } } as never, {
      onNote: (listener) => {
        hear = listener;
        return () => {};
      },
    });
    const section = sectionOf(testProgram('shuffle'), 0);
    const bar = () => playheadAt([placeSection(section, 0)], 1) ?? null;
    const note = (id: number, to: number | null) => hear({ note: { id, to }, playhead: null } as never);
    return { listens, own, note, bar, followed: () => followed };
  };

  it('tells at the bar line whether the harp was heard, once a change, and holds a note that goes on', () => {
    const { listens, own, note, bar, followed } = open();
    listens.onPlayhead(bar(), true);
    expect([own.harpHeard, followed()]).toEqual(['rests', 1]);
    note(1, null);
    listens.onPlayhead(bar(), true);
    listens.onPlayhead(bar(), true);
    expect([own.harpHeard, followed()]).toEqual(['plays', 2]);
    note(1, 3);
    listens.onPlayhead(bar(), true);
    listens.onPlayhead(bar(), true);
    expect([own.harpHeard, followed()]).toEqual(['rests', 3]);
  });

  it('forgets it when the microphone closes, the band stops, or it is not asked for', () => {
    const { listens, own, note, bar } = open();
    note(1, null);
    listens.onPlayhead(bar(), true);
    listens.onPlayhead(bar(), false);
    expect(own.harpHeard).toBeNull();
    listens.onPlayhead(bar(), true);
    expect(own.harpHeard).toBe('rests');
    listens.onPlayhead(null, true);
    expect(own.harpHeard).toBeNull();
    own.settings = { ...(own.settings as object), bandListens: false };
    note(2, null);
    listens.onPlayhead(bar(), true);
    expect(own.harpHeard).toBeNull();
  });

  it.each(FEEL_IDS)(
    '%s: plays fewer chords while the harp plays than while it rests, and nothing else of the band changes',
    (feel) => {
      const strokes = (harp: 'plays' | 'rests') => {
        const sections = [1, 2, 3, 4].map((seed) =>
          sectionOf({ ...testProgram(feel, { style: { seed } }), harp }, 1),
        );
        const count = sections.reduce(
          (sum, section) => sum + new Set(partOf(section, 'chords').map(({ at }) => at)).size,
          0,
        );
        return {
          count,
          others: sections.map((section) => [partOf(section, 'bass'), partOf(section, 'drums')]),
        };
      };
      expect(strokes('plays').count).toBeLessThan(strokes('rests').count * 0.8);
      expect(strokes('plays').others).toEqual(strokes('rests').others);
    },
  );
});
