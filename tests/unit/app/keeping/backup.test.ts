import { describe, expect, it } from 'vitest';
import { withSong } from '../../../../src/core/book/gig-set';
import { elementAt } from '../../../../src/core/theory/element-at';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

const open = () => openSession(createKeptValues(() => createFakeStorage(), new EventTarget()));

/** A session with one of everything. */
const furnished = () => {
  const opened = open();
  const { commands, state } = opened;
  commands.newChart();
  commands.editChart({ name: 'Ferry', text: '| C7 | F7 | G7 |' });
  commands.saveChart();
  commands.typeTempo('87');
  commands.keepSong('Ferry at Noon');
  commands.newSet('Village hall');
  commands.keepSet(withSong(elementAt(state().book.sets, 0), elementAt(state().book.songs, 0).id));
  commands.keepTuning({ ...state().settings.tuning, id: 'mine', name: 'Mine' });
  commands.newChart();
  commands.editChart({ name: 'Half done', text: '| Dm |' });
  return opened;
};

const saved = async ({ commands, takeAway }: ReturnType<typeof open>): Promise<string> => {
  expect(await commands.saveEverything()).toMatch(/^Handed over as combshed-everything.json: your choices/);
  return new TextDecoder().decode(Uint8Array.from(takeAway.files.at(-1)?.bytes ?? []));
};

const kept = ({ state }: ReturnType<typeof open>) => {
  const { settings, ownCharts, ownTunings, harpCase, book, chartDrafts } = state();
  const drafts = Object.values(chartDrafts.drafts)
    .map(({ present }) => present)
    .filter(({ id }) => !ownCharts.some((chart) => chart.id === id));
  return { settings, ownCharts, ownTunings, harpCase, songs: book.songs, sets: book.sets, drafts };
};

describe('everything in one file', () => {
  it('is there again on an empty page, what was typed and not saved included', async () => {
    const here = furnished();
    const there = open();
    const told = await there.commands.restoreEverything(await saved(here), true);
    expect(kept(there)).toEqual(kept(here));
    expect(told).toEqual([
      '1 tuning added.',
      '1 chart added.',
      '1 unsaved chart added.',
      '1 song added.',
      '1 set added.',
      'The choices on the stand are those of the file.',
    ]);
    expect(there.state().tune.chart.bars).toHaveLength(3);
  });

  it('restored twice, or where it was made, changes nothing', async () => {
    const here = furnished();
    const text = await saved(here);
    const before = kept(here);
    for (let times = 0; times < 2; times += 1) await here.commands.restoreEverything(text, false);
    expect(kept(here)).toEqual(before);
    expect(await here.commands.restoreEverything(text, false)).toContain('1 song here already.');
  });

  it('keeps both where a thing has become different, and sets find the songs they were made of', async () => {
    const here = furnished();
    const text = await saved(here);
    const id = elementAt(here.state().book.songs, 0).id;
    here.commands.changeSong(id, { words: 'Slower since Friday' });
    here.commands.dropSet(elementAt(here.state().book.sets, 0).id);
    await here.commands.restoreEverything(text, false);
    const { songs, sets } = here.state().book;
    expect(songs.map(({ name, words }) => [name, words])).toEqual([
      ['Ferry at Noon', 'Slower since Friday'],
      ['Ferry at Noon 2', ''],
    ]);
    expect(sets[0]?.entries[0]?.song).toBe(songs[1]?.id);
  });

  it('is refused piece by piece with reasons', async () => {
    const { commands, state } = open();
    const before = state().settings;
    expect(await commands.restoreEverything('<script>', true)).toEqual([expect.stringMatching(/no file/)]);
    const told = await commands.restoreEverything(
      JSON.stringify({
        program: 'combshed',
        version: 1,
        shelves: { songs: [7, { name: 'a', choices: {} }] },
      }),
      false,
    );
    expect(told).toEqual(['1 song added.', expect.stringMatching(/holds no choices and was left out/)]);
    const newer = JSON.stringify({ program: 'combshed', version: 1, shelves: { mutes: [{ id: 'm' }] } });
    expect(await commands.restoreEverything(newer, true)).toEqual([
      'What the file calls “mutes” is not known here and was left out.',
      'The file holds no choices, so those on the stand stay.',
    ]);
    expect(state().settings).toBe(before);
  });
});
