import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bookSong } from '../../../src/core/book/book-song';
import {
  type GigSet,
  moveEntry,
  parseGigSet,
  setSeconds,
  withoutEntry,
  withSong,
  withTalk,
} from '../../../src/core/book/gig-set';
import {
  fewestSwaps,
  harpSwaps,
  harpsOfSet,
  replacementsOf,
  type SetSong,
} from '../../../src/core/book/set-harps';
import { OPEN_CHORUSES, type SongFacts, songFacts } from '../../../src/core/book/song-facts';
import type { OwnedHarp } from '../../../src/core/harp/harp-case';
import { positionOf } from '../../../src/core/harp/positions';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { elementAt } from '../../../src/core/theory/element-at';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';

const EMPTY: GigSet = { id: 'set-1', name: 'Village hall', entries: [], goesOn: false };
const set = ['a', 'b', 'c'].reduce(withSong, EMPTY);
const order = ({ entries }: GigSet): string => entries.map(({ song }) => song).join('');

/** A song on a harp, in second position. */
const on = (name: string, harpKey: number): SetSong => ({ id: name, name, facts: factsOn(harpKey) });

const factsOn = (harpKey: number): SongFacts => {
  const known = facts.get(harpKey);
  if (known !== undefined) return known;
  const song = bookSong({ id: '', name: '' }, { ...DEFAULT_SETTINGS, harpKey: asPitchClass(harpKey) }, []);
  facts.set(harpKey, songFacts(song, []));
  return factsOn(harpKey);
};
const facts = new Map<number, SongFacts>();

const owned = (key: number): OwnedHarp => ({
  id: `harp-${key}`,
  name: '',
  key: asPitchClass(key),
  octave: 0,
  tuning: DEFAULT_SETTINGS.tuning,
  intonation: 'equal',
  reference: DEFAULT_SETTINGS.reference,
  stretch: 0,
  valved: [],
});

describe('a set', () => {
  it('moves songs without losing or doubling one', () => {
    expect(order(moveEntry(set, 0, 2))).toBe('bca');
    expect(order(moveEntry(set, 2, 0))).toBe('cab');
    expect(moveEntry(set, 0, 3)).toBe(set);
    expect(order(withoutEntry(set, 1))).toBe('ac');
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(3), fc.nat(3)), { maxLength: 30 }), (moves) => {
        const moved = moves.reduce((now, [from, to]) => moveEntry(now, from, to), set);
        expect([...order(moved)].sort().join('')).toBe('abc');
      }),
    );
  });

  it('lasts as long as its songs and the talk between them', () => {
    const talked = withTalk(withTalk(set, 0, 10), 1, 20);
    expect(setSeconds(talked, () => 100)).toBe(330);
    expect(withTalk(set, 0, Number.NaN).entries[0]?.talk).toBe(0);
    expect(withTalk(set, 0, 1e9).entries[0]?.talk).toBe(900);
  });

  it('reads back what was stored and never throws on anything else', () => {
    expect(parseGigSet(JSON.parse(JSON.stringify(set)))).toEqual({ item: set, problems: [] });
    const { item, problems } = parseGigSet({ name: 'Hall', entries: [{ song: 'a', talk: -1 }, 7] });
    expect(item?.entries).toEqual([{ song: 'a', talk: 30 }]);
    expect(problems).toEqual([
      'The set “Hall”: one entry could not be read and was left out.',
      'The set “Hall”: the talk after 1 song could not be read; 30 seconds were taken.',
    ]);
    expect(parseGigSet({ entries: [], goesOn: 1 }).problems).toEqual([
      'The set “Set without a name”: it had no name; give it one.',
      'The set “Set without a name”: whether songs follow by themselves could not be read; they do not now.',
    ]);
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        parseGigSet(value);
      }),
    );
  });
});

describe('what a song comes to', () => {
  it('is read off its choices', () => {
    const { facts } = on('Wet Boots', 0);
    expect([facts.key, facts.harpName, facts.position, facts.tempo]).toEqual([
      'G',
      'C harp',
      '2nd position (cross)',
      104,
    ]);
    // 4 beats of 60/104 s a bar: one bar of count-in, then twelve bars a chorus; some 3 s for the final chord.
    expect(facts.seconds).toBeCloseTo((OPEN_CHORUSES * 12 + 1) * 4 * (60 / 104) + 3, 0);
    expect(facts.open).toBe(true);
  });

  it('holds with a chart of its own even where the player has thrown that chart away', () => {
    const chart = {
      id: 'chart-9',
      name: 'Ferry',
      text: '| C7 | F7 | G7 |',
      tonic: 'C',
      mode: 'major',
      meter: '4/4',
    } as const;
    const song = bookSong({ id: 'a', name: 'Ferry' }, { ...DEFAULT_SETTINGS, formId: chart.id }, [chart]);
    expect(songFacts(song, []).form).toBe('Ferry');
    expect(songFacts(song, []).chart.bars).toHaveLength(3);
    expect(songFacts(song, [{ ...chart, text: '| C7 |' }]).chart.bars).toHaveLength(1);
  });

  it('changes with the tempo', () => {
    const slow = bookSong({ id: 'a', name: 'a' }, { ...DEFAULT_SETTINGS, tempo: asBpm(52) }, []);
    // Twice as long, but for what rings on after the final chord, which no tempo makes longer.
    const ratio = songFacts(slow, []).seconds / on('b', 0).facts.seconds;
    expect(ratio).toBeGreaterThan(1.98);
    expect(ratio).toBeLessThan(2);
  });
});

describe('the harps of a set', () => {
  const songs = [on('one', 0), on('two', 5), on('three', 0), on('four', 10)];

  it('are laid out once each, in the order they are needed', () => {
    const harps = harpsOfSet(songs, [owned(0)]);
    expect(harps.map(({ name, songs: names, owned: has }) => [name, names.join(), has])).toEqual([
      ['C harp', 'one,three', true],
      ['F harp', 'two', false],
      ['Bb harp', 'four', false],
    ]);
  });

  it('that are missing are stood in for by the best of the case, in the position that keeps the song’s key', () => {
    const found = replacementsOf(songs, [owned(0), owned(7)], DEFAULT_SETTINGS.technique);
    expect(found.map(({ song }) => song)).toEqual(['two', 'four']);
    for (const { instead, song } of found) {
      const key = elementAt(songs, ['one', 'two', 'three', 'four'].indexOf(song)).facts.chart.key;
      const harpKey = instead?.harp === 'C harp' ? 0 : 7;
      expect(instead?.position.startsWith(String(positionOf(asPitchClass(harpKey), key)))).toBe(true);
      expect(instead?.why).not.toBe('');
    }
    expect(replacementsOf(songs, [], DEFAULT_SETTINGS.technique)[0]?.instead).toBeNull();
  });

  it('change least in the order that is offered: one time less than there are harps', () => {
    expect(harpSwaps(songs)).toBe(3);
    expect(fewestSwaps(songs)).toEqual([0, 2, 1, 3]);
    fc.assert(
      fc.property(fc.array(fc.nat(11), { minLength: 1, maxLength: 12 }), (keys) => {
        const some = keys.map((key, i) => on(`song ${i}`, key));
        const ordered = fewestSwaps(some);
        expect(ordered.toSorted((a, b) => a - b)).toEqual(some.map((_, i) => i));
        expect(ordered[0]).toBe(0);
        expect(harpSwaps(ordered.map((i) => elementAt(some, i)))).toBe(new Set(keys).size - 1);
      }),
      { numRuns: 30 },
    );
  });
});
