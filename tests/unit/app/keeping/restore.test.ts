import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseBendResults } from '../../../../src/core/bends/bend-results';
import { parseBookSong } from '../../../../src/core/book/book-song';
import { parseGigSet } from '../../../../src/core/book/gig-set';
import { parseOwnChart } from '../../../../src/core/chart-text/own-chart';
import { parseTuning } from '../../../../src/core/harp/custom-tuning';
import { parseHarpCase } from '../../../../src/core/harp/harp-case';
import { TUNINGS } from '../../../../src/core/harp/tunings';
import { parseKeptPhrase } from '../../../../src/core/phrasebook/kept-phrase';
import { STARTER_CALLS } from '../../../../src/core/phrasebook/starter-set';
import { parseSettings } from '../../../../src/core/settings/parse-settings';
import { asEpochMs } from '../../../../src/core/theory/units';
import { readPracticeItem } from '../../../../src/core/today/practice-item';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { anySettings } from '../../../helpers/settings-arbitraries';
import { SOAK_TIMEOUT, soakRuns } from '../../../helpers/soak';

type Item = Readonly<Record<string, unknown>>;

const name = fc.constantFrom('Wet Boots', 'Lamp Oil', 'Ferry at Noon', 'Gate');
const choices = fc
  .tuple(anySettings, fc.uniqueArray(fc.nat(50), { maxLength: 20 }))
  // Choices that an earlier version did not know are absent from what it kept.
  .map(([settings, absent]) =>
    Object.fromEntries(Object.entries(settings).filter((_, index) => !absent.includes(index))),
  );
const bendTry = fc.record({
  exercise: fc.constantFrom('dip', 'hold', 'slide'),
  hit: fc.boolean(),
  cents: fc.constantFrom(null, -12.5, 3),
  settling: fc.constantFrom(null, 0.2),
  marked: fc.boolean(),
});

/** Things as a player could have made them, by the shelf they lie on. */
const SHELVES: Readonly<
  Record<string, { readonly make: fc.Arbitrary<object>; read(value: unknown): unknown }>
> = {
  harps: {
    make: fc.record({
      key: fc.nat(11),
      octave: fc.integer({ min: -2, max: 1 }),
      tuning: fc.constantFrom(...TUNINGS),
    }),
    read: (value) => parseHarpCase([value]).harps[0],
  },
  tunings: {
    make: fc.constantFrom(...TUNINGS).map(({ blow, draw }) => ({ blow, draw })),
    read: (value) => parseTuning(value).tuning,
  },
  charts: {
    make: fc.record({
      text: fc.constantFrom('| C7 | F7 |', '[A]\n| Dm | % |', '| oops ('),
      tonic: fc.constantFrom('C', 'Bb'),
      mode: fc.constantFrom('major', 'minor'),
      meter: fc.constant('4/4'),
    }),
    read: (value) => parseOwnChart(value).chart,
  },
  songs: {
    make: fc.record({
      choices,
      words: fc.constantFrom('', 'capo for the guitar'),
      tags: fc.constant(['hall']),
    }),
    read: (value) => parseBookSong(value).item,
  },
  sets: {
    make: fc.record({
      entries: fc.array(fc.record({ song: fc.constantFrom('songs-0', 'songs-1'), talk: fc.nat(90) }), {
        maxLength: 3,
      }),
      goesOn: fc.boolean(),
    }),
    read: (value) => parseGigSet(value).item,
  },
  bends: {
    make: fc.record({ kind: fc.constantFrom('C4 a', 'G3 a'), tries: fc.array(bendTry, { maxLength: 5 }) }),
    read: (value) => parseBendResults({ ...(value as Item), name: "4D'" }).item,
  },
  phrases: {
    make: fc
      .constantFrom(...STARTER_CALLS)
      .map(({ phrase, level, position, tags }) => ({ phrase, level, position, tags })),
    read: (value) => parseKeptPhrase(value).item,
  },
  practice: {
    make: fc.record({
      exercise: fc.nat(2).map((position) => ({ kind: 'scale', scale: 'blues', position: position + 1 })),
      memory: fc
        .nat(9)
        .map((last) => ({ stability: 2, difficulty: 5, last, due: 9, times: 2, lapses: 0, passes: 2 })),
    }),
    read: (value) => readPracticeItem(value).item,
  },
};

/** Where two things of one id are one: results of the same exercise. */
const JOINED = ['bends', 'practice'];

/** What a browser keeps: the items of every shelf, as the program would have written them. */
const anyStore: fc.Arbitrary<Readonly<Record<string, readonly Item[]>>> = fc.record(
  Object.fromEntries(
    Object.entries(SHELVES).map(([shelf, { make, read }]) => [
      shelf,
      fc.array(fc.tuple(make, name), { maxLength: 3 }).map((made) => {
        const items = made.flatMap(([thing, called], index) => {
          const item = read({ ...thing, id: `${shelf}-${index}`, name: called });
          return item === null || item === undefined ? [] : [item as Item];
        });
        // Things of one shelf have ids of their own, and no two are the same but for their name.
        const bare = (item: Item) => JSON.stringify({ ...item, id: '', name: '' });
        return items.filter(
          (item, at) => items.findIndex((each) => each.id === item.id || bare(each) === bare(item)) === at,
        );
      }),
    ]),
  ),
);

const CLOCK = { now: () => asEpochMs(0), day: () => '2026-11-26' };

const openOn = (shelves: Readonly<Record<string, readonly Item[]>>, settings: unknown) => {
  const entries = Object.entries({ ...shelves, settings }).map(([key, value]) => [
    `combshed.${key}`,
    JSON.stringify(value),
  ]);
  const storage = createFakeStorage(Object.fromEntries(entries));
  const opened = openSession(
    createKeptValues(() => storage, new EventTarget()),
    { today: CLOCK },
  );
  const shelf = (key: string): readonly Item[] => JSON.parse(storage.items.get(`combshed.${key}`) ?? '[]');
  return { ...opened, shelf };
};

const file = async ({ commands, takeAway }: ReturnType<typeof openOn>): Promise<string> => {
  await commands.saveEverything();
  return new TextDecoder().decode(Uint8Array.from(takeAway.files.at(-1)?.bytes ?? []));
};

/** A try opens two sessions; a handful finds what a change breaks, the soak does the rest. */
const RUNS = { numRuns: Math.ceil(soakRuns(850) / 24) };

describe('everything that was saved', { timeout: SOAK_TIMEOUT }, () => {
  it('is the same on an empty page, whatever was kept, by this version or an earlier one', async () => {
    await fc.assert(
      fc.asyncProperty(anyStore, choices, async (shelves, kept) => {
        const here = openOn(shelves, { version: 1, ...kept });
        const there = openOn({}, {});
        await there.commands.restoreEverything(await file(here), true);
        for (const key of Object.keys(SHELVES)) expect(there.shelf(key)).toEqual(here.shelf(key));
        expect(there.state().settings).toEqual(here.state().settings);
        expect(here.state().settings.tempo).toBe(parseSettings(kept).settings.tempo);
        here.session.dispose();
        there.session.dispose();
      }),
      RUNS,
    );
  });

  it('goes beside what another page keeps: nothing is lost, nothing doubled, and a second time changes nothing', async () => {
    await fc.assert(
      fc.asyncProperty(anyStore, anyStore, async (mine, theirs) => {
        const here = openOn(mine, {});
        const there = openOn(theirs, {});
        const text = await file(here);
        await there.commands.restoreEverything(text, false);
        const bare = (item: Item) =>
          JSON.stringify({
            ...item,
            id: '',
            name: '',
            entries: Array.isArray(item.entries) && item.entries.length,
          });
        for (const [key, items] of Object.entries(theirs)) {
          const ids = there.shelf(key).map(({ id }) => id);
          expect(new Set(ids).size).toBe(ids.length);
          if (JOINED.includes(key)) continue;
          expect(there.shelf(key).slice(0, items.length)).toEqual(items);
          const all = there.shelf(key).map(bare);
          for (const item of mine[key] ?? []) expect(all).toContain(bare(item));
        }
        const once = Object.keys(SHELVES).map(there.shelf);
        await there.commands.restoreEverything(text, false);
        expect(Object.keys(SHELVES).map(there.shelf)).toEqual(once);
        here.session.dispose();
        there.session.dispose();
      }),
      RUNS,
    );
  });
});
