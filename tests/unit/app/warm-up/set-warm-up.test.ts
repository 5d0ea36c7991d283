import { describe, expect, it, vi } from 'vitest';
import { withSong } from '../../../../src/core/book/gig-set';
import { elementAt } from '../../../../src/core/theory/element-at';
import { asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

describe('the warm-up for a set on the stand', () => {
  it('puts harp after harp on the stand, and the player’s own choices back at the end', async () => {
    const { commands, state } = openSession(createKeptValues(() => createFakeStorage(), new EventTarget()));
    commands.keepSong('Wet Boots');
    commands.chooseHarpKey(asPitchClass(5));
    commands.keepSong('Ferry at Noon');
    commands.newSet('Village hall');
    const songs = state().book.songs.map(({ id }) => id);
    commands.keepSet(songs.reduce(withSong, elementAt(state().book.sets, 0)));
    commands.chooseHarpKey(asPitchClass(9));
    const before = state().settings;
    commands.startSetWarmUp({ set: elementAt(state().book.sets, 0).id, minutes: 5, silent: true });
    const harps: number[] = [];
    for (let i = 0; i < 20 && state().warmUp !== null; i += 1) {
      harps.push(state().settings.harpKey);
      const number = state().warmUp?.number;
      commands.skipWarmUpStep();
      await vi.waitFor(() => expect(state().warmUp?.number).not.toBe(number), 20_000);
    }
    expect(harps.filter((key, i) => key !== harps[i - 1])).toEqual([0, 5, 0]);
    expect(state().settings).toEqual(before);
  });
});
