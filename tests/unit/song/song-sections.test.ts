import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/core/arranger/program';
import { sectionAt } from '../../../src/core/arranger/section-at';
import {
  eachSongSection,
  type SongExtent,
  sectionSeconds,
  songSeconds,
} from '../../../src/core/song/song-sections';
import { asBpm } from '../../../src/core/theory/units';
import { testProgram } from '../../helpers/test-charts';

const songSections = (...song: Parameters<typeof eachSongSection>) => [...eachSongSection(...song)];

const extent = (changes: Partial<SongExtent> = {}): SongExtent => ({
  choruses: 2,
  countIn: true,
  ending: true,
  ...changes,
});

const kindsOf = (plan: Partial<Plan>, changes: Partial<SongExtent>): readonly string[] =>
  songSections(testProgram('shuffle', { plan }), extent(changes)).map(({ kind }) => kind);

const bars = { from: 4, to: 7 };

describe('which sections are taken away', () => {
  it.each<[string, Partial<Plan>, Partial<SongExtent>, string]>([
    ['all of it', { countInBars: 1, intro: 'turnaround' }, {}, 'count-in intro chorus chorus ending'],
    ['a count-in the plan does not have', { countInBars: 0 }, {}, 'count-in chorus chorus ending'],
    ['no count-in', { countInBars: 2 }, { countIn: false }, 'chorus chorus ending'],
    ['no ending', {}, { ending: false }, 'count-in chorus chorus'],
    ['one chorus alone', {}, { choruses: 1, countIn: false, ending: false }, 'chorus'],
    [
      'more choruses than the plan',
      { choruses: 1 },
      { choruses: 3, countIn: false },
      'chorus chorus chorus ending',
    ],
    ['fewer choruses than the plan', { choruses: 9 }, { choruses: 1, countIn: false }, 'chorus ending'],
    ['a stop, which needs no section', { ending: 'stop' }, { countIn: false }, 'chorus chorus'],
    ['repeated bars', { repeat: bars, intro: 'drums' }, {}, 'count-in chorus chorus'],
    [
      'repeated bars with a count between',
      { repeat: bars, countBetween: true },
      {},
      'count-in chorus count-in chorus',
    ],
    [
      'repeated bars with a count between, to go round',
      { repeat: bars, countBetween: true },
      { ending: false },
      'count-in chorus count-in chorus',
    ],
  ])('%s', (_, plan, changes, expected) => {
    expect(kindsOf(plan, changes).join(' ')).toBe(expected);
  });

  it('counts in with as many bars as the plan has', () => {
    const [countIn] = songSections(testProgram('shuffle', { plan: { countInBars: 2 } }), extent());
    expect(countIn?.chart.bars).toHaveLength(2);
  });

  it('leads on where there is no ending: the last chorus is what an endless song plays', () => {
    const program = testProgram('swing', { plan: { arc: 'breathe', ritard: true } });
    const last = songSections(program, extent({ countIn: false, ending: false })).at(-1);
    expect(last).toEqual({ ...sectionAt(program, 1), last: true });
  });

  it.each([0, 1.5, -1, Number.NaN])('refuses %d choruses', (choruses) => {
    expect(() => songSections(testProgram('shuffle'), extent({ choruses }))).toThrow(
      /whole number of at least 1/,
    );
  });
});

describe('how long a section lasts', () => {
  it.each([
    ['twelve bars of 4/4 at 120', 'shuffle', 120, 24],
    ['twelve bars of 12/8 at 60 dotted quarters', 'slow-12-8', 60, 48],
  ] as const)('%s', (_, feel, tempo, seconds) => {
    const [section] = songSections(testProgram(feel, { tempo }), extent({ countIn: false, ending: false }));
    expect(section && sectionSeconds(section)).toBeCloseTo(seconds, 9);
  });

  it('adds up the steps of a slowing end: beats 44 to 47 last longer than the rest', () => {
    const [section] = songSections(
      testProgram('shuffle', { tempo: 120, plan: { ritard: true } }),
      extent({ choruses: 1, countIn: false }),
    );
    const steps = section?.tempo ?? [];
    const beats = Array.from(
      { length: 48 },
      (_, beat) => 60 / (steps.findLast(({ at }) => at <= beat * 480)?.bpm ?? 0),
    );
    expect(section && sectionSeconds(section)).toBeCloseTo(
      beats.reduce((sum, seconds) => sum + seconds, 0),
      9,
    );
    expect(beats[47]).toBeGreaterThan(0.6);
  });
});

const anyPlan = fc.record({
  countInBars: fc.constantFrom(0, 1, 2),
  intro: fc.constantFrom('none', 'turnaround', 'pickup', 'drums'),
  choruses: fc.constantFrom(null, 1, 4),
  ending: fc.constantFrom('cadence', 'held', 'stop'),
  repeat: fc.constantFrom(null, bars),
  countBetween: fc.boolean(),
  ritard: fc.boolean(),
  tempo: fc.constantFrom<Plan['tempo'][]>(
    { kind: 'fixed' },
    { kind: 'ramp', from: asBpm(70), step: 5, every: 1 },
    { kind: 'alternate', slow: asBpm(60) },
  ),
} satisfies { readonly [Key in keyof Plan]?: fc.Arbitrary<Plan[Key]> });
const anyExtent = fc.record({
  choruses: fc.integer({ min: 1, max: 4 }),
  countIn: fc.boolean(),
  ending: fc.boolean(),
});
const anyFeel = fc.constantFrom('shuffle' as const, 'slow-12-8' as const, 'rock' as const);

describe('for every plan', () => {
  it('follow one another, have the choruses asked for, and only the last is the last', () => {
    fc.assert(
      fc.property(anyFeel, anyPlan, anyExtent, (feel, plan, wanted) => {
        const sections = songSections(testProgram(feel, { plan }), wanted);
        expect(sections.map(({ index }) => index)).toEqual(sections.map((_, i) => i));
        expect(sections.filter(({ kind }) => kind === 'chorus')).toHaveLength(wanted.choruses);
        expect(sections.map(({ last }) => last)).toEqual(sections.map((_, i) => i === sections.length - 1));
        expect(sections[0]?.kind === 'count-in').toBe(wanted.countIn);
      }),
      { numRuns: 40 },
    );
  });

  it('last as long as foretold', () => {
    fc.assert(
      fc.property(anyFeel, anyPlan, anyExtent, (feel, plan, wanted) => {
        const program = testProgram(feel, { plan });
        const real = songSections(program, wanted).reduce((sum, section) => sum + sectionSeconds(section), 0);
        expect(songSeconds(program, wanted)).toBeCloseTo(real, 6);
      }),
      { numRuns: 40 },
    );
  });
});
