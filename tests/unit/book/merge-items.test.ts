import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readBackup } from '../../../src/core/book/backup';
import { mergeItems, withNewIds } from '../../../src/core/book/merge-items';

const item = fc.record({
  id: fc.constantFrom('a', 'b', 'c', 'd'),
  name: fc.constantFrom('Ferry', 'Wet Boots', 'Lamp Oil'),
  text: fc.constantFrom('| C7 |', '| F7 |', '| G7 |'),
});
const shelf = fc.uniqueArray(item, { selector: ({ id }) => id, maxLength: 4 });

describe('things put beside others', () => {
  it('leave what is there, lose nothing, double nothing, and have ids of their own', () => {
    fc.assert(
      fc.property(shelf, shelf, (present, incoming) => {
        const { added, known, newIds } = mergeItems(present, incoming);
        const all = [...present, ...added];
        expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
        expect(added.length + known).toBe(incoming.length);
        for (const { id, text } of incoming) {
          expect(all.find((each) => each.id === (newIds.get(id) ?? id))?.text).toBe(text);
        }
      }),
    );
  });

  it('change nothing the second time', () => {
    fc.assert(
      fc.property(shelf, shelf, (present, incoming) => {
        const once = [...present, ...mergeItems(present, incoming).added];
        expect(mergeItems(once, incoming).added).toEqual([]);
      }),
    );
  });

  it('take what speaks of them along to their new ids', () => {
    const ids = new Map([['song-1', 'song-1 2']]);
    const set = { id: 'set-1', entries: [{ song: 'song-1', talk: 5 }, { song: 'song-2' }], talk: 'song-10' };
    expect(withNewIds(set, ids)).toEqual({
      id: 'set-1',
      entries: [{ song: 'song-1 2', talk: 5 }, { song: 'song-2' }],
      talk: 'song-10',
    });
  });
});

describe('a file with everything', () => {
  it('is read or refused in words, whatever it is', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          fc.jsonValue().map((value) => JSON.stringify(value)),
        ),
        (text) => {
          const read = readBackup(text);
          expect('trouble' in read ? read.trouble.length : Object.keys(read.shelves).length).toBeGreaterThan(
            -1,
          );
        },
      ),
    );
    expect(readBackup('{"program":"other","shelves":{}}')).toEqual({
      trouble: expect.stringMatching(/no file/),
    });
    expect(readBackup('{"program":"combshed","version":9,"shelves":{"harps":7,"sets":[]}}')).toEqual({
      shelves: { sets: [] },
      settings: undefined,
      problems: [expect.stringMatching(/newer version/), expect.stringMatching(/“harps” is no list/)],
    });
  });
});
