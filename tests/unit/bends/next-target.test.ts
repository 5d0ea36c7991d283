import { describe, expect, it } from 'vitest';
import { bendTask } from '../../../src/core/bends/bend-exercise';
import { harpKind, noResults, withTry } from '../../../src/core/bends/bend-results';
import { bendTargets } from '../../../src/core/bends/bend-targets';
import type { BendVerdict } from '../../../src/core/bends/bend-verdict';
import { FIRST_BEND, verdictWords } from '../../../src/core/bends/bend-words';
import { nextTarget } from '../../../src/core/bends/next-target';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { asCents, asHz, asPitchClass, asSeconds } from '../../../src/core/theory/units';

const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });
const order = bendTargets(harp);

/** What is given next after such tries, + for a hit; `present` is the one practised last. */
const next = (tries: Readonly<Record<string, string>>, present: string | null): string | null => {
  const resultsOf = (id: string) =>
    [...(tries[id] ?? '')].reduce(
      (results, sign) =>
        withTry(results, { exercise: 'hold', hit: sign === '+', cents: null, settling: null, marked: false }),
      noResults(harpKind(harp), id),
    );
  const given = nextTarget({ order, resultsOf }, order.find((sound) => soundId(sound) === present) ?? null);
  return given && soundId(given);
};

describe('the sound that is given next', () => {
  it('is the first to be learnt, which has one more turn after a hit and gives way after two or two misses', () => {
    expect(next({}, null)).toBe("4D'");
    expect(next({ "4D'": '+' }, "4D'")).toBe("4D'");
    expect(next({ "4D'": '-+' }, "4D'")).toBe("4D'");
    expect([next({ "4D'": '++' }, "4D'"), next({ "4D'": '--' }, "4D'")]).toEqual(["6D'", "6D'"]);
  });

  it('goes on to what follows where one is steady, and comes back to it', () => {
    const tries = { "4D'": '+++++', "6D'": '--' };
    expect(next(tries, "6D'")).toBe("1D'");
    expect(next({ ...tries, "1D'": '--' }, "1D'")).toBe("4D'");
    expect(next({ ...tries, "1D'": '--' }, "4D'")).toBe("6D'");
  });

  it('is none on a harp without bends', () => {
    expect(nextTarget({ order: [], resultsOf: () => undefined }, null)).toBeNull();
  });
});

describe('what is said of a try', () => {
  const target = order[0];
  if (target === undefined) throw new Error('No target');
  const task = bendTask(target, {
    harp,
    reference: asHz(440),
    exercise: 'hold',
    level: 'developing',
    tonic: null,
  });
  const stood = { held: asSeconds(0.9), settling: asSeconds(0.1), blue: null };
  const verdicts: readonly BendVerdict[] = [
    { kind: 'right', cents: asCents(0), ...stood },
    { kind: 'flat', cents: asCents(-35), ...stood },
    { kind: 'sharp', cents: asCents(35), ...stood },
    { kind: 'flat', cents: asCents(-35), ...stood, blue: 'fifth' },
    { kind: 'short', held: asSeconds(0.2) },
    { kind: 'dip', fall: asCents(40) },
    { kind: 'other', sounds: [] },
    { kind: 'unsteady' },
    { kind: 'shape', missing: 'cold' },
    { kind: 'nothing' },
  ];

  it('is what happened and one next step, and never that anything was wrong or weak', () => {
    const said = verdicts.map((verdict) => verdictWords(task, verdict));
    for (const { short, happened, next: step } of said) {
      expect(short.length).toBeLessThan(24);
      expect([happened, step].every((sentence) => /^[A-Z0-9].*\.$/.test(sentence))).toBe(true);
      expect(`${happened} ${step}`).not.toMatch(/wrong|bad|fail|harder$/i);
    }
    expect(new Set(said.map(({ happened }) => happened)).size).toBe(verdicts.length);
  });

  it('sends a flat bend up and a sharp one down, with no more air', () => {
    expect(said('flat')).toMatch(/rise/);
    expect(said('sharp')).toMatch(/sink further.*no more air/);
  });
  const said = (kind: 'flat' | 'sharp'): string =>
    verdictWords(task, { kind, cents: asCents(kind === 'flat' ? -35 : 35), ...stood }).next;

  it('has three sentences for a first bend, none of which asks for force', () => {
    expect(FIRST_BEND).toHaveLength(3);
    expect(FIRST_BEND.join(' ')).toMatch(/Do not pull harder.*teacher/);
  });
});
