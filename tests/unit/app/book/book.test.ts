import { describe, expect, it } from 'vitest';
import { withSong } from '../../../../src/core/book/gig-set';
import { elementAt } from '../../../../src/core/theory/element-at';
import { asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const open = () => {
  const storage = createFakeStorage();
  const kept = createKeptValues(() => storage, new EventTarget());
  return { storage, kept, ...openSession(kept) };
};

/** A session with a set of two songs: a shuffle of one chorus on a C harp, then one on an F harp. */
const withSet = () => {
  const opened = open();
  const { commands, state } = opened;
  const { plan } = state().settings;
  commands.choose({ plan: { ...plan, choruses: 1 } });
  commands.keepSong('Wet Boots');
  commands.chooseHarpKey(asPitchClass(5));
  commands.keepSong('Ferry at Noon');
  commands.newSet('Village hall');
  const set = elementAt(state().book.sets, 0);
  commands.keepSet(
    state()
      .book.songs.map(({ id }) => id)
      .reduce(withSong, set),
  );
  return { ...opened, set };
};

const settle = () => new Promise((resolve) => setTimeout(resolve, 0));

describe('the book', () => {
  it('keeps the stand as a song in one action and opens it in one', () => {
    const { commands, state } = open();
    commands.chooseFeel('rhumba');
    commands.typeTempo('96');
    commands.keepSong('Wet Boots');
    commands.keepSong('Wet Boots');
    expect(state().book.songs.map(({ name }) => name)).toEqual(['Wet Boots', 'Wet Boots 2']);
    commands.chooseFeel('shuffle');
    commands.typeTempo('132');
    commands.openSong(elementAt(state().book.songs, 0).id);
    expect([state().settings.style.feel, state().settings.tempo]).toEqual(['rhumba', 96]);
    expect(state().tune.chart.title).toBeTruthy();
  });

  it('is there again after the page was closed', () => {
    const { commands, kept } = open();
    commands.keepSong('Wet Boots');
    commands.newSet('Village hall');
    const later = openSession(kept);
    expect(later.state().book.songs.map(({ name }) => name)).toEqual(['Wet Boots']);
    expect(later.state().book.sets.map(({ name }) => name)).toEqual(['Village hall']);
  });

  it('brings back what was taken out, with the places it had in sets', () => {
    const { commands, state } = withSet();
    const [first] = state().book.songs;
    commands.dropSong(first?.id ?? '');
    expect(state().book.songs).toHaveLength(1);
    commands.restoreDropped();
    expect(state().book.songs.some(({ id }) => id === first?.id)).toBe(true);
    commands.dropSet('nothing');
    commands.dropSet(elementAt(state().book.sets, 0).id);
    expect(state().book.sets).toEqual([]);
    commands.restoreDropped();
    expect(state().book.sets[0]?.entries).toHaveLength(2);
  });

  it('puts a chart back that the song was kept with', () => {
    const { commands, state } = open();
    commands.newChart();
    commands.editChart({ name: 'Ferry', text: '| C7 | F7 | G7 |' });
    commands.saveChart();
    commands.keepSong('Ferry at Noon');
    commands.deleteChart();
    commands.chooseForm('standard');
    commands.openSong(elementAt(state().book.songs, 0).id);
    expect(state().ownCharts.map(({ name }) => name)).toEqual(['Ferry']);
    expect(state().tune.chart.bars).toHaveLength(3);
  });
});

describe('a set that runs', () => {
  it('puts its songs on the stand one after another, forward and back', () => {
    const { commands, state, set } = withSet();
    commands.startSet(set.id);
    expect(state().settings.harpKey).toBe(0);
    commands.nextSong();
    expect(state().settings.harpKey).toBe(5);
    commands.nextSong();
    expect(state().book.running?.index).toBe(1);
    commands.previousSong();
    expect(state().settings.harpKey).toBe(0);
    commands.leaveSet();
    commands.nextSong();
    expect(state().settings.harpKey).toBe(0);
  });

  it('goes on by itself when a song has ended and the talk is over', async () => {
    const { commands, state, set, band, pass } = withSet();
    commands.keepSet({ ...elementAt(state().book.sets, 0), goesOn: true });
    commands.startSet(set.id);
    await commands.play();
    const last = [0, 1, 2, 3].find((index) => {
      band.hear(index, 0);
      return band.playhead()?.section.last;
    });
    expect(last).toBeDefined();
    band.report({ kind: 'ready' });
    expect(state().book.running).toMatchObject({ index: 0, talk: 30 });
    pass();
    await settle();
    expect(state().book.running).toMatchObject({ index: 1, talk: null });
    expect(state().settings.harpKey).toBe(5);
    expect(state().status.kind).toBe('playing');
  });

  it('waits where the player stopped the song, or asks it to wait', async () => {
    const { commands, state, set, band, pass } = withSet();
    commands.keepSet({ ...elementAt(state().book.sets, 0), goesOn: true });
    commands.startSet(set.id);
    await commands.play();
    band.hear(1, 0);
    commands.stop();
    expect(state().book.running).toMatchObject({ index: 0, talk: null });
    await commands.play();
    for (const index of [1, 2]) band.hear(index, 0);
    band.report({ kind: 'ready' });
    commands.holdSet();
    pass();
    await settle();
    expect(state().book.running).toMatchObject({ index: 0, talk: null });
  });

  it('says when a song of it is gone', () => {
    const { commands, state, set, notices } = withSet();
    commands.dropSong(elementAt(state().book.songs, 1).id);
    commands.startSet(set.id, 1);
    expect(notices()).toMatch(/no longer in your book/);
  });
});
