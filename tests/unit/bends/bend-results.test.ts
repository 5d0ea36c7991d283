import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type BendTry,
  figuresOf,
  harpKind,
  joinResults,
  noResults,
  parseBendResults,
  type Standing,
  tryOf,
  withTry,
} from '../../../src/core/bends/bend-results';
import { reachByResults } from '../../../src/core/bends/reach-by-results';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { isInReach, NATURAL_NOTES, type TechniqueChoice } from '../../../src/core/harp/reach';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { asCents, asPitchClass, asSeconds } from '../../../src/core/theory/units';

const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(7), octave: 0 });
const made = (change: Partial<BendTry> = {}): BendTry => ({
  exercise: 'hold',
  hit: true,
  cents: null,
  settling: null,
  marked: false,
  ...change,
});
const resultsOf = (...tries: readonly BendTry[]) => tries.reduce(withTry, noResults(harpKind(harp), '6OB'));
const marks = (text: string) => resultsOf(...[...text].map((sign) => made({ hit: sign === '+' })));

describe('results of bends', () => {
  it('have hit rate, mean and spread as a table of statistics gives them, and the median time to settle', () => {
    // 2, 4, 4, 4, 5, 5, 7, 9: mean 5, standard deviation of a sample 2.138 (a textbook's example of the mean square).
    const cents = [2, 4, 4, 4, 5, 5, 7, 9];
    const figures = figuresOf(
      resultsOf(...cents.map((each) => made({ cents: asCents(each), settling: asSeconds(each / 10) }))),
    );
    expect([figures.tries, figures.hits, figures.settling]).toEqual([8, 8, 0.5]);
    expect(figures.cents?.mean).toBe(5);
    expect(figures.cents?.spread).toBeCloseTo(2.138, 3);
  });

  it.each([
    ['++++', null],
    ['+++++', 'steady'],
    ['+++-+', 'steady'],
    ['+-+-+', 'coming'],
    ['-----+', 'not yet'],
    ['----------++++++++++', 'steady'],
  ] as const)('%s is %s', (text, expected) => {
    expect(figuresOf(marks(text)).standing).toBe(expected);
  });

  it('count a dip for no bend, and silence for no try', () => {
    expect(
      figuresOf(resultsOf(...Array.from({ length: 9 }, () => made({ exercise: 'dip' })))).standing,
    ).toBeNull();
    expect(tryOf('hold', { kind: 'nothing' })).toBeNull();
    expect(tryOf('hold', { kind: 'short', held: asSeconds(0.1) })).toMatchObject({ hit: false, cents: null });
  });

  it('keep the latest only, and are read back as they were', () => {
    const many = resultsOf(...Array.from({ length: 60 }, (_, i) => made({ cents: asCents(i) })));
    expect(many.tries.map(({ cents }) => cents)).toEqual(Array.from({ length: 40 }, (_, i) => i + 20));
    expect(parseBendResults(JSON.parse(JSON.stringify(many)))).toEqual({ item: many, problems: [] });
  });

  it('are read from anything: what is no try is left out and counted', () => {
    const good = marks('++');
    const read = parseBendResults({ ...good, tries: [...good.tries, { hit: 'yes' }, null] });
    expect(read.item?.tries).toEqual(good.tries);
    expect(read.problems).toEqual(['Of the kept tries at 6OB, 2 could not be read and were left out.']);
    fc.assert(
      fc.property(fc.anything(), (value) => {
        const { item, problems } = parseBendResults(value);
        expect(item === null).toBe(problems.length > 0 && item === null);
      }),
      { numRuns: 200 },
    );
  });
});

describe('reach by results', () => {
  const change = (technique: TechniqueChoice, standings: Readonly<Record<string, Standing>>) =>
    reachByResults(harp, technique, new Map(Object.entries(standings)));
  const reach = (technique: TechniqueChoice) =>
    harp.sounds.filter((sound) => sound.technique !== 'natural' && isInReach(sound, technique)).map(soundId);

  it('brings a sound in without the others of its technique', () => {
    const { technique, gained, lost } = change(NATURAL_NOTES, { '6OB': 'steady', "4D'": 'coming' });
    expect([gained.map(soundId).sort(), lost]).toEqual([["4D'", '6OB'].sort(), []]);
    expect(reach(technique).sort()).toEqual(["4D'", '6OB'].sort());
  });

  it('takes out only what was tried and does not come, and says so', () => {
    const usual: TechniqueChoice = { drawBends: true, blowBends: false, overbends: false, off: ["2D'"] };
    const { technique, lost } = change(usual, { "3D'": 'not yet', '6OB': 'not yet' });
    expect(lost.map(soundId)).toEqual(["3D'"]);
    expect(technique).toEqual({ ...usual, off: ["2D'", "3D'"] });
  });

  it('changes nothing where nothing is to be changed', () => {
    const { technique } = change(NATURAL_NOTES, { "3D'": 'not yet' });
    expect(technique).toBe(NATURAL_NOTES);
  });
});

describe('results from two places', () => {
  it('count what both have once, and the others all', () => {
    const joined = (present: string, incoming: string): string =>
      joinResults(marks(present), marks(incoming))
        .tries.map(({ hit }) => (hit ? '+' : '-'))
        .join('');
    expect(joined('++-', '++-')).toBe('++-');
    expect(joined('++-+', '+-')).toBe('++-+');
    expect(joined('+-', '++-+')).toBe('++-+');
    expect(joined('-+++', '--+--')).toBe('--+--+++');
    expect(joined('', '-+')).toBe('-+');
  });

  it('are the same joined a second time, however many there are', () => {
    const row = fc.string({ unit: fc.constantFrom('+', '-'), maxLength: 60 });
    fc.assert(
      fc.property(row, row, (present, incoming) => {
        const once = joinResults(marks(present), marks(incoming));
        expect(joinResults(once, marks(incoming))).toEqual(once);
        expect(once.tries.length).toBeGreaterThanOrEqual(Math.max(marks(present).tries.length, 0));
      }),
      { numRuns: 300 },
    );
  });
});
