import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookSong, isOnStand, parseBookSong, withBookSong } from '../../../src/core/book/book-song';
import { findKept } from '../../../src/core/phrasebook/kept-phrase';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { parseSettings } from '../../../src/core/settings/parse-settings';
import { tagsOf } from '../../../src/core/theory/kept-tags';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';
import { anySettings } from '../../helpers/settings-arbitraries';
import { OWN_CHART } from '../../helpers/test-charts';

describe('a song of the book', () => {
  it('brings back on any stand what was on the stand it was kept from, and leaves the player their own', () => {
    fc.assert(
      fc.property(anySettings, anySettings, (from, onto) => {
        const song = bookSong({ id: 'a', name: 'Wet Boots' }, from, []);
        const stand = withBookSong(onto, song);
        expect(isOnStand(stand, song)).toBe(true);
        expect(stand.tempo).toBe(from.tempo);
        expect(stand.plan).toEqual(from.plan);
        expect(stand.technique).toBe(onto.technique);
        expect(stand.mix).toBe(onto.mix);
        expect(stand.look).toBe(onto.look);
      }),
      { numRuns: 60 },
    );
  });

  it('reads back what was stored, whatever it held', () => {
    fc.assert(
      fc.property(anySettings, fc.string({ maxLength: 50 }), (settings, words) => {
        const readable = parseSettings({ ...settings }).settings;
        const song = {
          ...bookSong({ id: 'song-1', name: 'Wet Boots' }, { ...readable, formId: OWN_CHART.id }, [
            OWN_CHART,
          ]),
          words,
          tags: ['slow', 'opener'],
        };
        const { item, problems } = parseBookSong(JSON.parse(JSON.stringify(song)));
        expect(problems).toEqual([]);
        expect(item).toEqual(song);
      }),
      { numRuns: 60 },
    );
  });

  it('never throws on anything that is not one, keeps what it can and says the rest', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const read = parseBookSong(value);
        if (read.item === null) expect(read.problems.length).toBeGreaterThan(0);
      }),
      { numRuns: 200 },
    );
    const { item, problems } = parseBookSong({ name: '', choices: { tempo: 'fast', harpKey: 5 }, tags: 7 });
    expect(item?.choices.harpKey).toBe(5);
    expect(item?.choices.tempo).toBe(DEFAULT_SETTINGS.tempo);
    expect(problems.join(' ')).toMatch(/kept tempo could not be read.*no name.*tags could not be read/);
  });

  it('knows when the stand has moved on from it', () => {
    const song = bookSong({ id: 'a', name: 'Wet Boots' }, DEFAULT_SETTINGS, []);
    expect(isOnStand({ ...DEFAULT_SETTINGS, tempo: asBpm(97) }, song)).toBe(false);
    expect(isOnStand({ ...DEFAULT_SETTINGS, harpKey: asPitchClass(7) }, song)).toBe(false);
    expect(isOnStand({ ...DEFAULT_SETTINGS, look: 'night' }, song)).toBe(true);
    const otherTake = { ...DEFAULT_SETTINGS, style: { ...DEFAULT_SETTINGS.style, seed: 77 } };
    expect(isOnStand(otherTake, song)).toBe(true);
    const kept = bookSong({ id: 'a', name: 'Wet Boots' }, { ...DEFAULT_SETTINGS, sameTake: true }, []);
    expect(isOnStand({ ...otherTake, sameTake: true }, kept)).toBe(false);
  });

  it('is found by words of its name, tags and notes, and has each tag once', () => {
    const songs = ['Wet Boots', 'Ferry at Noon'].map((name, i) => ({
      ...bookSong({ id: name, name }, DEFAULT_SETTINGS, []),
      tags: i === 0 ? ['opener'] : ['slow'],
      words: i === 0 ? 'count it off loudly' : '',
    }));
    expect(findKept(songs, 'BOOTS count').map(({ name }) => name)).toEqual(['Wet Boots']);
    expect(findKept(songs, 'slow noon').map(({ name }) => name)).toEqual(['Ferry at Noon']);
    expect(findKept(songs, ' ')).toHaveLength(2);
    expect(tagsOf(' slow, opener ,slow,, ')).toEqual(['slow', 'opener']);
  });
});
