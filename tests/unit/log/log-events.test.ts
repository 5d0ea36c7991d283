import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BendSum, LogEntry, LogFacts } from '../../../src/core/log/log-entry';
import { type LogEvent, logStep, type OpenEntry } from '../../../src/core/log/log-events';
import { readEntry, storableEntry } from '../../../src/core/log/read-entry';
import { asEpochMs } from '../../../src/core/theory/units';
import { soakRuns } from '../../helpers/soak';

const FACTS: LogFacts = {
  kind: 'song',
  song: 'Wet Boots',
  form: 'Twelve-bar',
  key: 'G',
  harp: 'C harp',
  harpKind: 'C',
  position: 2,
};

const BARS = 12;
const BAR_SECONDS = 2;

const at = (seconds: number) => asEpochMs(seconds * 1000);

/** What is written when these events happen one after another: the last writing of each entry. */
const written = (events: readonly LogEvent[]): readonly LogEntry[] => {
  const kept = new Map<string, LogEntry>();
  let open: OpenEntry | null = null;
  for (const event of events) {
    const step = logStep(open, event);
    open = step.open;
    if (step.write !== null) kept.set(step.write.id, step.write);
  }
  return [...kept.values()];
};

const began = (id: string, seconds: number): LogEvent => ({
  kind: 'began',
  at: at(seconds),
  id,
  day: '2026-11-25',
  facts: FACTS,
});

/** A bar of a song of twelve, by its number from 0. */
const bar = (number: number, from = 0, tempo = 120): LogEvent => ({
  kind: 'bar',
  at: at(from + number * BAR_SECONDS),
  chorus: Math.floor(number / BARS),
  last: number % BARS === BARS - 1,
  tempo,
});

const bars = (count: number, from = 0): readonly LogEvent[] =>
  Array.from({ length: count }, (_, number) => bar(number, from));

describe('an entry of the log', () => {
  it('has the choruses, the tempo and the time that sounded', () => {
    const [entry] = written([began('a', 0), ...bars(25), { kind: 'ended', at: at(50) }]);
    expect(entry).toMatchObject({
      ...FACTS,
      choruses: 2,
      seconds: 50,
      laps: [{ tempo: 120, choruses: 2, clean: 0, judged: 0 }],
    });
  });

  it('does not count what was paused, or slept through', () => {
    const [entry] = written([
      began('a', 0),
      ...bars(5),
      { kind: 'paused', at: at(10) },
      { kind: 'resumed', at: at(100) },
      { kind: 'bar', at: at(102), chorus: 0, last: false, tempo: 120 },
      { kind: 'ended', at: at(3600) },
    ]);
    expect(entry?.seconds).toBe(10 + 2 + 30);
  });

  it('is nothing where the song was stopped at once', () => {
    expect(written([began('a', 0), bar(0), { kind: 'ended', at: at(3) }])).toEqual([]);
  });

  it('adds up what was heard, tempo by tempo and bend by bend', () => {
    const bend: BendSum = { sound: "4D'", tries: 2, hits: 1, measured: 2, cents: 30, squares: 500 };
    const heard = {
      ...{ notes: 10, chord: 6, blue: 2, scale: 1, timed: 10, early: 1, late: 0 },
      functions: { R: 4, '3': 2 },
    };
    const judged: LogEvent = { kind: 'judged', tempo: 120, clean: true, heard, bends: [bend] };
    const [entry] = written([began('a', 0), ...bars(13), judged, judged, { kind: 'ended', at: at(26) }]);
    expect(entry?.heard).toMatchObject({ notes: 20, chord: 12, functions: { R: 8, '3': 4 } });
    expect(entry?.bends).toEqual([
      { sound: "4D'", tries: 4, hits: 2, measured: 4, cents: 60, squares: 1000 },
    ]);
    expect(entry?.laps).toEqual([{ tempo: 120, choruses: 1, clean: 2, judged: 2 }]);
  });

  it('loses no more than the bar being played when all ends without a word, and is never there twice', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 3, max: 60 }), { minLength: 1, maxLength: 5 }),
        fc.nat(),
        (songs, cut) => {
          let from = 0;
          const events = songs.flatMap((count, index) => {
            const song = [began(`song ${index}`, from), ...bars(count, from)];
            from += count * BAR_SECONDS + 60;
            const ended: LogEvent = { kind: 'ended', at: at(from - 60) };
            return index % 2 === 0 ? [...song, ended] : song;
          });
          const until = events.slice(0, 1 + (cut % events.length));
          const kept = written(until);
          expect(new Set(kept.map(({ id }) => id)).size).toBe(kept.length);
          const last = until.findLastIndex(({ kind }) => kind === 'began');
          const since = until.slice(last).filter(({ kind }) => kind === 'bar').length;
          const whole = until.slice(last).some(({ kind }) => kind === 'ended');
          const name = until[last]?.kind === 'began' ? until[last].id : '';
          const sounded = (whole ? since : since - 1) * BAR_SECONDS;
          if (sounded >= 4) expect(kept.find(({ id }) => id === name)?.seconds).toBe(sounded);
        },
      ),
      { numRuns: soakRuns(100) },
    );
  });
});

const anyEntry = fc
  .record({
    songs: fc.integer({ min: 3, max: 60 }),
    heard: fc.boolean(),
    bends: fc.nat(4),
    sound: fc.constantFrom("4D'", "3D'''", "10B''", '6OB', '10OD'),
  })
  .map(({ songs, heard, bends, sound }) => {
    const sum: BendSum = { sound, tries: 1, hits: 1, measured: 1, cents: -4.5, squares: 20.25 };
    const events: LogEvent[] = [began('a', 0), ...bars(songs)];
    for (let i = 0; i < bends; i += 1) events.push({ kind: 'bend', at: at(200 + i), sum });
    if (heard)
      events.push({
        kind: 'judged',
        tempo: 99,
        clean: false,
        heard: { notes: 1, chord: 1, blue: 0, scale: 0, functions: { b7: 1 }, timed: 1, early: 0, late: 1 },
        bends: [],
      });
    return written(events)[0];
  });

describe('reading an entry', () => {
  it('gives back what was written', () => {
    fc.assert(
      fc.property(anyEntry, (entry) => {
        if (entry === undefined) throw new Error('nothing was written');
        const stored: unknown = JSON.parse(JSON.stringify(storableEntry(entry)));
        expect(readEntry(stored)).toEqual({ item: entry, problems: [] });
      }),
      { numRuns: soakRuns(200) },
    );
  });

  it('never throws, and keeps what it can of an entry with id, kind and day', () => {
    fc.assert(
      fc.property(fc.anything(), fc.anything(), fc.anything(), (laps, heard, seconds) => {
        const day = '2026-11-25';
        const { item } = readEntry({ id: 'a', kind: 'song', began: 5, day, laps, heard, seconds });
        expect(item).toMatchObject({ id: 'a', day });
        expect(readEntry(laps).item).toBeNull();
      }),
      { numRuns: soakRuns(200) },
    );
  });

  it.each([
    [1, 1],
    [12, 12],
    [0, 2],
    [13, 2],
  ])('has position %i as %i', (position, read) => {
    const entry = { id: 'a', kind: 'song', began: 5, day: '2026-11-25', position };
    expect(readEntry(entry).item?.position).toBe(read);
  });

  it('says when an entry has no day, and when it is of a newer program', () => {
    expect(readEntry({ id: 'a' }).problems.join()).toMatch(/no readable day/);
    const newer = { version: 99, id: 'a', kind: 'song', began: 1, day: '2026-11-25', later: true };
    expect(readEntry(newer).item?.id).toBe('a');
    expect(readEntry(newer).problems.join()).toMatch(/newer version/);
  });
});
