import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layChart, METERS } from '../../../src/core/chart/build-chart';
import type { Chart } from '../../../src/core/chart/chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Sound } from '../../../src/core/harp/harp';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { type CostContext, LINE_WEIGHTS, lineShape, priceSound } from '../../../src/core/lines/line-cost';
import {
  choicesFor,
  type LinePath,
  pathCost,
  searchLine,
  VARIETY,
} from '../../../src/core/lines/line-search';
import { type LineKind, type LineSlot, lineSlots, type Pace } from '../../../src/core/lines/line-slots';
import { LINE_TASTES } from '../../../src/core/lines/line-tastes';
import { readSymbol } from '../../../src/core/theory/chords';
import { asPitchClass } from '../../../src/core/theory/units';
import { soakRuns } from '../../helpers/soak';

const anyHarp = fc
  .record({ tuning: fc.constantFrom(...TUNINGS), key: fc.integer({ min: 0, max: 11 }) })
  .map(({ tuning, key }) => buildHarp({ tuning, key: asPitchClass(key), octave: 0 }));

const anyChord = fc.constantFrom('G7', 'C7', 'D7', 'Am7', 'Bdim7', 'Fmaj7', 'E7b9', 'C5');

const chartOf = (bars: readonly (readonly string[])[], meter: '4/4' | '3/4' = '4/4'): Chart =>
  layChart({
    title: 'Few bars',
    mode: 'major',
    tonic: 'G',
    meter: METERS[meter],
    bars: bars.map((bar) => bar.flatMap((symbol) => readSymbol(symbol) ?? [])),
  });

const anyContext = (kind: LineKind, pace: Pace): fc.Arbitrary<CostContext> =>
  fc
    .record({
      taste: fc.constantFrom(...LINE_TASTES.map(({ id }) => id)),
      comfortableBeats: fc.constantFrom(1, 2.5, 8),
    })
    .map(({ taste, comfortableBeats }) => ({
      weights: LINE_WEIGHTS[taste],
      shape: lineShape(kind, pace),
      beatTicks: METERS['4/4'].beatTicks,
      comfortableBeats,
    }));

interface Small {
  readonly slots: readonly LineSlot[];
  readonly context: CostContext;
}

const anySlots: fc.Arbitrary<Small> = fc.oneof(
  smallSlots('guide tones', 1, fc.array(fc.tuple(anyChord), { minLength: 1, maxLength: 4 })),
  smallSlots(
    'chord tones',
    1,
    fc.array(fc.array(anyChord, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 2 }),
  ),
  smallSlots('chord tones', 2, fc.array(fc.tuple(anyChord), { minLength: 1, maxLength: 2 })),
  smallSlots('arpeggio', 1, fc.array(fc.tuple(anyChord), { minLength: 1, maxLength: 1 })),
);

function smallSlots(
  kind: LineKind,
  pace: Pace,
  bars: fc.Arbitrary<readonly (readonly string[])[]>,
): fc.Arbitrary<Small> {
  return fc.tuple(bars, anyContext(kind, pace)).map(([chords, context]) => ({
    slots: lineSlots(chartOf(chords), kind, pace),
    context,
  }));
}

/** Every way to fill the slots, empty ones included. */
const allPaths = (choices: readonly (readonly LinePath[number][])[]): readonly LinePath[] =>
  choices.reduce<readonly LinePath[]>(
    (paths, each) => paths.flatMap((path) => [...each, null].map((choice) => [...path, choice])),
    [[]],
  );

const take = (sounds: readonly Sound[], from: number, count: number): readonly Sound[] =>
  Array.from({ length: count }, (_, i) => sounds[(from + i * 5) % sounds.length]).flatMap(
    (each) => each ?? [],
  );

describe('searchLine', () => {
  it('finds what trying every line finds', () => {
    fc.assert(
      fc.property(anyHarp, anySlots, fc.nat(40), (harp, { slots, context }, from) => {
        const sounds = take(harp.sounds, from, 9);
        const priced = sounds.map((sound) => priceSound(sound, harp));
        const paths = allPaths(slots.map((slot) => choicesFor(slot, priced)));
        const least = Math.min(...paths.map((path) => pathCost(slots, path, context).total));
        const found = searchLine({ slots, harp, sounds, context, seed: 0, variety: VARIETY });
        expect(pathCost(slots, found, context).total).toBeCloseTo(least, 9);
      }),
      { numRuns: soakRuns(100) },
    );
  });

  it('never costs more when the player can do more', () => {
    fc.assert(
      fc.property(anyHarp, anySlots, fc.integer({ min: 0, max: 45 }), (harp, { slots, context }, count) => {
        const some = harp.sounds.filter((_, i) => (i * 7) % harp.sounds.length < count);
        const cost = (sounds: readonly Sound[]): number =>
          pathCost(slots, searchLine({ slots, harp, sounds, context, seed: 0, variety: VARIETY }), context)
            .total;
        expect(cost(harp.sounds)).toBeLessThanOrEqual(cost(some) + 1e-9);
      }),
    );
  });

  it('leaves a slot empty only where nothing in reach fits', () => {
    fc.assert(
      fc.property(anyHarp, anySlots, fc.integer({ min: 1, max: 12 }), (harp, { slots, context }, count) => {
        const sounds = take(harp.sounds, count, count);
        const priced = sounds.map((sound) => priceSound(sound, harp));
        const path = searchLine({ slots, harp, sounds, context, seed: 0, variety: VARIETY });
        expect(path.map((choice) => choice === null)).toEqual(
          slots.map((slot) => choicesFor(slot, priced).length === 0),
        );
      }),
    );
  });

  it('gives with other seeds other lines that cost little more, and the same again with the same', () => {
    const seed = fc.integer({ min: 1, max: 1e6 });
    fc.assert(
      fc.property(anyHarp, anySlots, seed, (harp, { slots, context }, number) => {
        const search = { slots, harp, sounds: harp.sounds, context, variety: VARIETY };
        const best = pathCost(slots, searchLine({ ...search, seed: 0 }), context).total;
        const path = searchLine({ ...search, seed: number });
        const cost = pathCost(slots, path, context).total;
        expect(cost).toBeGreaterThanOrEqual(best - 1e-9);
        expect(cost).toBeLessThanOrEqual(best + VARIETY * slots.length + 1e-9);
        expect(searchLine({ ...search, seed: number })).toEqual(path);
      }),
    );
  });

  it('has nothing to say about no slots', () => {
    const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
    const context = {
      weights: LINE_WEIGHTS.even,
      shape: lineShape('arpeggio', 1),
      beatTicks: METERS['4/4'].beatTicks,
      comfortableBeats: 8,
    };
    expect(searchLine({ slots: [], harp, sounds: harp.sounds, context, seed: 0, variety: VARIETY })).toEqual(
      [],
    );
  });
});

describe('the cost of a line', () => {
  const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
  const context: CostContext = {
    weights: { hole: 1, turn: 10, technique: 100, leap: 1000, intonation: 1e4, air: 1e5 },
    shape: { again: 1e7, swerve: 1e8, skip: 1e9 },
    beatTicks: METERS['4/4'].beatTicks,
    comfortableBeats: 8,
  };
  const costOf = (
    bars: readonly (readonly string[])[],
    ids: readonly string[],
    kind: LineKind = 'chord tones',
  ) => {
    const slots = lineSlots(chartOf(bars), kind);
    const path = slots.map((slot, i) => {
      const sound = harp.sounds.find((each) => soundId(each) === ids[i]);
      return sound === undefined ? null : (choicesFor(slot, [priceSound(sound, harp)])[0] ?? null);
    });
    return pathCost(slots, path, context);
  };

  it.each([
    ['holes and a turn', [['C7'], ['G7']], ['4B', '5D'], { holes: 1, turns: 10, leaps: 5000, technique: 0 }],
    ['the same breath', [['G7'], ['D7']], ['5D', '4D'], { holes: 1, turns: 0, leaps: 3000 }],
    ['a bend slid into on its reed', [['G7'], ['C7']], ['3D', "3D'"], { technique: 150, intonation: 9000 }],
    ['a bend hit from elsewhere', [['G7'], ['C7']], ['4D', "3D'"], { technique: 200, holes: 1 }],
    ['a bend with its floor to lean on', [['G7']], ["2D''"], { technique: 175, intonation: 4000 }],
    ['an overblow', [['D7']], ['5OB'], { technique: 450, intonation: 9000 }],
    ['the top octave', [['G7']], ['9D'], { technique: 40 }],
    ['the same pitch over the same chord', [['G7'], ['G7']], ['2D', '3B'], { shape: 1e7, holes: 1 }],
    ['an empty place', [['G7']], ['none'], { missing: 1000, total: 1000 }],
  ] as const)('%s', (_, bars, ids, parts) => {
    const cost = costOf(bars, ids);
    for (const [part, value] of Object.entries(parts)) {
      expect([part, Object.entries(cost).find(([name]) => name === part)?.[1]]).toEqual([
        part,
        expect.closeTo(value, 6),
      ]);
    }
    const { total, ...rest } = cost;
    expect(Object.values(rest).reduce((sum, each) => sum + each, 0)).toBeCloseTo(total, 3);
  });

  it('counts tones passed over and changes of direction in an arpeggio', () => {
    expect(costOf([['G7']], ['2D', '3D', '4D', '5D'], 'arpeggio').shape).toBe(0);
    expect(costOf([['G7']], ['2D', '4D', '3D', '4D'], 'arpeggio').shape).toBe(1e9 + 2e8);
  });

  it('lets long breaths in or out cost by the beat, and a new line of four bars breathe', () => {
    const held = (bars: number, id: string): number =>
      costOf(
        Array.from({ length: bars }, () => ['G7']),
        Array.from({ length: bars }, () => id),
      ).air;
    expect([1, 2, 3, 4, 5].map((bars) => held(bars, '2D'))).toEqual([0, 0, 4e5, 12e5, 12e5]);
    expect(held(4, '3B')).toBe(12e5);
    expect(costOf([['G7'], ['G7'], ['G7'], ['G7']], ['2D', '2D', '3B', '2D']).air).toBe(0);
  });
});
