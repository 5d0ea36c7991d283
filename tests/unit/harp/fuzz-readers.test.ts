import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { markTuning, parseTuning } from '../../../src/core/harp/custom-tuning';
import { buildOwnedHarp, parseHarpCase, REED_CENTS } from '../../../src/core/harp/harp-case';
import { printCents, readCents } from '../../../src/core/harp/read-cents';
import { createRandom, pick, type Random } from '../../../src/core/theory/random';
import { asPitchClass } from '../../../src/core/theory/units';
import { SOAK_TIMEOUT, soakRuns } from '../../helpers/soak';

const runs = { numRuns: soakRuns() };

/** Text near what is meant, and far from it. */
const centsText = fc.oneof(
  { weight: 4, arbitrary: fc.string({ unit: fc.constantFrom(...'0123456789+-−.,e \t'), maxLength: 7 }) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
);

/** What may stand where a number or a text belongs. */
const JUNK: readonly unknown[] = [
  null,
  undefined,
  '',
  'x',
  '__proto__',
  true,
  -1,
  0.5,
  1e9,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  [],
  {},
  [null],
];
const NAMES = ['', ' ', 'Mine', '  Mine ', 'x'.repeat(90), '♭'];

/**
 * Values are drawn from a random seed instead of being put together by fast-check, which takes ten times as long for
 * lists within records; a failure names its seed.
 */
const draw = (random: Random) => {
  const whole = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1));
  const orJunk = <T>(good: () => T, oneIn = 12): unknown =>
    whole(1, oneIn) === 1 ? JUNK[whole(0, JUNK.length - 1)] : good();
  const many = <T>(low: number, high: number, each: () => T): readonly T[] =>
    Array.from({ length: whole(low, high) }, each);
  const name = (): unknown => orJunk(() => pick(random, NAMES));
  const row = (holes: number): unknown =>
    orJunk(
      () => many(holes, holes + (whole(1, 6) === 1 ? 1 : 0), () => orJunk(() => whole(-24, 60), 90)),
      20,
    );
  const tuning = (): unknown =>
    orJunk(() => {
      const holes = whole(9, 14);
      return { id: name(), name: name(), blow: row(holes), draw: row(holes) };
    });
  const cents = (): unknown => {
    const each = (): readonly number[] => many(10, whole(10, 11), () => whole(-101, 100));
    return { cents: { blow: each(), draw: each() } };
  };
  const harp = (): unknown =>
    orJunk(() => ({
      tuning: tuning(),
      key: orJunk(() => whole(0, 11)),
      octave: orJunk(() => whole(-2, 1)),
      intonation: orJunk(() =>
        whole(0, 1) === 0 ? pick(random, ['equal', 'just-second', 'toString']) : cents(),
      ),
      reference: orJunk(() => whole(438, 448)),
      valved: orJunk(() => many(0, 4, () => whole(1, 15))),
      ...(whole(0, 1) === 0 ? {} : { id: name(), name: name(), stretch: orJunk(() => whole(-1, 12)) }),
    }));
  return { tuning, harp };
};
/** Building a harp takes longer than all the rest of a try. */
const BUILT_ONE_IN = 10;

const seed = fc.nat({ max: 2 ** 31 - 1 });

const isSentence = (text: string): boolean => /^[“A-Z\d−+-].*[.]$/su.test(text);

describe('reading what players type and keep, tried at random', () => {
  it(
    'cents of a reed: a number in range that prints and reads back, or a sentence',
    () => {
      fc.assert(
        fc.property(centsText, (text) => {
          const read = readCents(text);
          if (typeof read === 'string') return isSentence(read);
          const again = readCents(printCents(read));
          return Math.abs(read) <= REED_CENTS && again === read;
        }),
        runs,
      );
      expect(readCents(printCents(-13.7))).toBe(-13.7);
    },
    SOAK_TIMEOUT,
  );

  it(
    'a tuning: a harp that can be built, every change said, and kept as it is the next time',
    () => {
      fc.assert(
        fc.property(seed, (number) => {
          const given = draw(createRandom(number)).tuning();
          const read = parseTuning(given);
          if (number % BUILT_ONE_IN === 0)
            buildHarp({ tuning: read.tuning, key: asPitchClass(0), octave: 0 });
          const record =
            typeof given === 'object' && given !== null ? (given as Record<string, unknown>) : {};
          const kept =
            JSON.stringify(record.blow) === JSON.stringify(read.tuning.blow) &&
            JSON.stringify(record.draw) === JSON.stringify(read.tuning.draw) &&
            typeof record.name === 'string' &&
            record.name.trim() === read.tuning.name;
          const again = parseTuning(JSON.parse(JSON.stringify(read.tuning)));
          return (
            kept === (read.problems.length === 0) &&
            read.problems.every(isSentence) &&
            again.problems.length === 0 &&
            JSON.stringify(again.tuning) === JSON.stringify(read.tuning) &&
            (number % BUILT_ONE_IN > 0 ||
              markTuning(read.tuning).every(({ sentence }) => isSentence(sentence)))
          );
        }),
        runs,
      );
    },
    SOAK_TIMEOUT,
  );

  it(
    'a harp case: harps that can be built, every loss said, and kept as it is the next time',
    () => {
      fc.assert(
        fc.property(seed, (number) => {
          const given = draw(createRandom(number)).harp();
          const read = parseHarpCase([given]);
          if (number % BUILT_ONE_IN === 0) read.harps.forEach(buildOwnedHarp);
          const [only] = read.harps;
          const record =
            typeof given === 'object' && given !== null ? (given as Record<string, unknown>) : {};
          const same = (field: 'octave' | 'intonation' | 'reference'): boolean =>
            JSON.stringify(record[field]) === JSON.stringify(only?.[field]);
          const kept =
            only !== undefined &&
            same('octave') &&
            same('intonation') &&
            same('reference') &&
            (record.stretch ?? 0) === only.stretch &&
            (record.name === undefined ||
              (typeof record.name === 'string' && record.name.trim() === only.name));
          const again = parseHarpCase(JSON.parse(JSON.stringify(read.harps)));
          return (
            (kept || read.problems.length > 0) &&
            read.problems.every(isSentence) &&
            again.problems.length === 0 &&
            JSON.stringify(again.harps) === JSON.stringify(read.harps)
          );
        }),
        runs,
      );
      expect(parseHarpCase([])).toEqual({ harps: [], problems: [] });
    },
    SOAK_TIMEOUT,
  );
});
