import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookSong } from '../../../../src/core/book/book-song';
import { readSongText, songText, withOwnChart } from '../../../../src/core/book/song-link';
import { parseSettings } from '../../../../src/core/settings/parse-settings';
import { elementAt } from '../../../../src/core/theory/element-at';
import { createPageLink } from '../../../../src/link/page-link';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { anySettings } from '../../../helpers/settings-arbitraries';
import { soon } from '../../../helpers/soon';
import { OWN_CHART } from '../../../helpers/test-charts';

const openAt = (hash: string) =>
  openSession(
    createKeptValues(() => createFakeStorage(), new EventTarget()),
    {
      book: createPageLink({ location: { hash, origin: 'http://127.0.0.1', pathname: '/' }, show: () => {} }),
    },
  );

/** Reading is not done in one turn: the platform unpacks in its own time. */
const until = (done: () => boolean): Promise<void> => soon(() => expect(done()).toBe(true));

describe('a song as text', () => {
  it('comes back as it was', () => {
    fc.assert(
      fc.property(anySettings, (settings) => {
        const readable = parseSettings({ ...settings }).settings;
        const song = bookSong({ id: 'a', name: 'Wet Boots' }, { ...readable, formId: OWN_CHART.id }, [
          OWN_CHART,
        ]);
        const { item, problems, stand } = readSongText(songText(song, readable));
        expect(problems).toEqual([]);
        expect({ ...item, id: 'a' }).toEqual(song);
        expect(readable).toMatchObject(stand ?? { technique: 'missing' });
        expect(readSongText(songText(song)).stand).toBeNull();
      }),
      { numRuns: 60 },
    );
  });

  it('that is none is refused in a sentence', () => {
    expect(readSongText('{').problems).toEqual(['What came with the link is not a song of this program.']);
    expect(readSongText('[1]').item).toBeNull();
  });

  it('never takes the place of another chart of the player', () => {
    const settings = parseSettings({ formId: OWN_CHART.id }).settings;
    const song = bookSong({ id: 'a', name: 'a' }, settings, [OWN_CHART]);
    const mine = { ...OWN_CHART, text: '| Am |' };
    expect(withOwnChart(song, [OWN_CHART])).toBe(song);
    const moved = withOwnChart(song, [mine]);
    expect(moved.chart).toMatchObject({ text: OWN_CHART.text, name: 'Ferry 2' });
    expect(moved.choices.formId).toBe(moved.chart?.id);
    expect(moved.chart?.id).not.toBe(mine.id);
  });
});

describe('a link made on one page', () => {
  it('opens whole on another: offered first, then on the stand and in the book', async () => {
    const here = openAt('');
    here.commands.newChart();
    here.commands.editChart({ name: 'Ferry', text: '| C7 | F7 | G7 |' });
    here.commands.saveChart();
    here.commands.typeTempo('87');
    here.commands.keepSong('Ferry at Noon');
    const link = await here.commands.linkTo(elementAt(here.state().book.songs, 0).id);
    if (!('text' in link)) throw new Error(link.trouble);

    const there = openAt(new URL(link.text).hash);
    await until(() => there.state().book.linked !== null);
    expect(there.state().settings.tempo).toBe(104);
    expect(there.state().book.linkedStand).toBeNull();
    there.commands.takeLinkedSong(true);
    expect(there.state().settings.tempo).toBe(87);
    expect(there.state().tune.chart.bars).toHaveLength(3);
    expect(there.state().book.songs.map(({ name }) => name)).toEqual(['Ferry at Noon']);
    expect(there.state().book.linked).toBeNull();
  });

  it('holds the stand as it is, its reach, mix and views with it, and leaves what belongs to the machine', async () => {
    const here = openAt('');
    here.commands.newChart();
    here.commands.editChart({ name: 'Ferry', text: '| Dm7 | G7 |' });
    here.commands.saveChart();
    const { technique, mix } = here.state().settings;
    here.commands.choose({
      technique: { ...technique, overbends: true, off: ['4B'] },
      mix: { ...mix, master: 0.25 },
      ...{ drawing: 'keys', plainWords: true, mirrored: true, microphone: 'desk', takeMinutes: 5 },
    });
    const link = await here.commands.linkTo(null);
    if (!('text' in link)) throw new Error(link.trouble);
    for (const whole of [true, false]) {
      const there = openAt(new URL(link.text).hash);
      await until(() => there.state().book.linked !== null);
      const before = there.state().settings;
      there.commands.takeLinkedSong(whole);
      const after = there.state().settings;
      const {
        technique: reach,
        drawing,
        plainWords,
      } = (whole ? here.state() : { settings: before }).settings;
      expect(after).toMatchObject({ technique: reach, drawing, plainWords });
      expect(after.mix.master).toBe(whole ? 0.25 : before.mix.master);
      expect(after).toMatchObject({ mirrored: false, microphone: null, takeMinutes: 0 });
      expect(there.state().tune.chart).toEqual(here.state().tune.chart);
      expect(there.state().book.songs[0]?.name).toBe('Ferry');
    }
  });

  it('that is damaged does nothing but show a sentence', async () => {
    const { state, notices } = openAt('#song=AAAA');
    const before = state().settings;
    await until(() => notices() !== '');
    expect(notices()).toMatch(/damaged or cut short/);
    expect(state().book.linked).toBeNull();
    expect(state().settings).toBe(before);
  });
});
