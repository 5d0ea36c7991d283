import { describe, expect, it } from 'vitest';
import type { LogEntry } from '../../../src/core/log/log-entry';
import { logCsv, logJson, sumInWords, sumOfLog } from '../../../src/core/log/log-files';
import { readEntry } from '../../../src/core/log/read-entry';
import { asEpochMs } from '../../../src/core/theory/units';

const ENTRY: LogEntry = {
  id: 'a',
  kind: 'song',
  began: asEpochMs(Date.UTC(2026, 10, 25, 18)),
  day: '2026-11-25',
  song: 'Wet Boots, "slow"',
  form: '=1+1',
  key: 'Bb',
  harp: 'Eb harp',
  harpKind: 'Eb',
  position: 2,
  choruses: 3,
  seconds: 126,
  laps: [
    { tempo: 96, choruses: 2, clean: 2, judged: 2 },
    { tempo: 92, choruses: 1, clean: 0, judged: 1 },
  ],
  heard: null,
  bends: [{ sound: "4D'", tries: 4, hits: 3, measured: 4, cents: 10, squares: 60 }],
  phrases: [],
};

/** Reads CSV by the grammar of RFC 4180, section 2. */
const readCsv = (text: string): readonly (readonly string[])[] => {
  const rows: string[][] = [[]];
  for (const [, quoted, plain = '', end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    rows.at(-1)?.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows.slice(0, -1);
};

describe('the log as a table', () => {
  it('has a row of names and one an entry, with as many fields (RFC 4180, 2.3 and 2.4)', () => {
    const [names, row, ...rest] = readCsv(logCsv([ENTRY]));
    expect(rest).toEqual([]);
    expect(row).toHaveLength(names?.length ?? 0);
    const of = (name: string) => row?.[names?.indexOf(name) ?? -1];
    expect(of('song')).toBe('Wet Boots, "slow"');
    expect([of('minutes'), of('tempo'), of('fastest tempo')]).toEqual(['2.1', '92', '96']);
    expect([of('choruses judged'), of('choruses clean'), of('bends')]).toEqual(['3', '2', "4D': 3 of 4"]);
  });

  it('has nothing that a table program would take for a formula', () => {
    expect(logCsv([ENTRY])).toContain(",'=1+1,");
  });
});

describe('an entry of the log', () => {
  const heard = {
    notes: 9,
    chord: 5,
    blue: 1,
    scale: 2,
    functions: { R: 3, b7: 2 },
    timed: 4,
    early: 1,
    late: 0,
  };

  it('keeps what can be read, and says that there was more', () => {
    const odd = {
      ...ENTRY,
      seconds: 'long',
      laps: [...ENTRY.laps, { tempo: 0 }],
      heard: { ...heard, late: -1, functions: { ...heard.functions, valueOf: 1, b3: 'x' } },
    };
    const { item, problems } = readEntry(odd);
    expect(item).toEqual({ ...ENTRY, seconds: 0, heard });
    expect(problems).toEqual([
      'Of an entry of the log, 2026-11-25, not all could be read; the rest of it was kept.',
    ]);
    expect(readEntry({ ...ENTRY, heard }).problems).toEqual([]);
    // What an earlier version did not write is not missed.
    expect(readEntry({ id: 'a', kind: 'song', began: 0, day: '2026-11-25' }).problems).toEqual([]);
  });
});

describe('the log as JSON', () => {
  it('is read back entry by entry', () => {
    const { entries } = JSON.parse(logJson([ENTRY])) as { entries: readonly unknown[] };
    expect(entries.map((each) => readEntry(each).item)).toEqual([ENTRY]);
  });
});

describe('the sum in words', () => {
  it.each([
    [[{ seconds: 4, choruses: 0 }], '4 seconds', 'on one day'],
    [[{ seconds: 0.2, choruses: 0 }], '1 second', 'on one day'],
    [[{ seconds: 62, choruses: 1 }], '1 minute', 'with 1 chorus on one day'],
    [[{ seconds: 1900, choruses: 7 }], '32 minutes', 'with 7 choruses on one day'],
    [
      [
        { seconds: 3600, choruses: 10 },
        { seconds: 8400, choruses: 2, day: '2026-11-26' },
      ],
      '3 hours 20 minutes',
      'with 12 choruses on 2 days',
    ],
    [[{ seconds: 7200, choruses: 3 }], '2 hours', 'with 3 choruses on one day'],
  ])('of %j is what one would say', (changes, ...words) => {
    expect(sumInWords(sumOfLog(changes.map((change) => ({ ...ENTRY, ...change }))))).toEqual(words);
  });
});
