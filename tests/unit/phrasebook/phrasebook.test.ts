import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { homeChord } from '../../../src/core/chart/home-chord';
import { buildHarp } from '../../../src/core/harp/build-harp';
import {
  EVERY_TECHNIQUE,
  isInReach,
  NATURAL_NOTES,
  type TechniqueChoice,
} from '../../../src/core/harp/reach';
import { RICHTER } from '../../../src/core/harp/tunings';
import { onHarp } from '../../../src/core/phrase/phrase';
import { printPhrase } from '../../../src/core/phrase/print-phrase';
import { readPhrase } from '../../../src/core/phrase/read-phrase';
import { forLevel } from '../../../src/core/phrasebook/for-level';
import {
  findKept,
  PHRASE_LIMITS,
  parseKeptPhrase,
  withNotes,
} from '../../../src/core/phrasebook/kept-phrase';
import { checkPhrase } from '../../../src/core/phrasebook/phrase-check';
import { STARTER_CALLS, STARTER_EXERCISES } from '../../../src/core/phrasebook/starter-set';
import { CLASS_LEVELS, type ClassLevel } from '../../../src/core/practice/class-levels';
import { readPlan } from '../../../src/core/practice/trade-plan';
import { asPitchClass } from '../../../src/core/theory/units';

const harp = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
/** A C harp in second position plays in G. */
const home = homeChord(buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' }));

/** What each level reaches. */
const REACH: Readonly<Record<number, TechniqueChoice>> = {
  1: NATURAL_NOTES,
  2: { ...EVERY_TECHNIQUE, blowBends: false, overbends: false },
  3: { ...EVERY_TECHNIQUE, overbends: false },
};

describe('the starter set', () => {
  it('has eight calls at each of three levels and eight exercises, each under a name of its own', () => {
    expect([1, 2, 3].map((level) => STARTER_CALLS.filter((call) => call.level === level).length)).toEqual([
      8, 8, 8,
    ]);
    expect(new Set(STARTER_CALLS.map(({ name }) => name)).size).toBe(24);
    expect(new Set(STARTER_CALLS.map(({ phrase }) => printPhrase(phrase, 'signs'))).size).toBe(24);
    expect(new Set(STARTER_EXERCISES.map(({ id }) => id)).size).toBe(8);
  });

  it.each(STARTER_CALLS.map((call) => [call.name, call] as const))(
    '%s is read whole, lies in its level’s reach, comes home and leaves breath',
    (_, { phrase, level }) => {
      expect(checkPhrase(phrase, { harp, technique: REACH[level] ?? NATURAL_NOTES, home })).toEqual([]);
      expect(readPhrase(printPhrase(phrase, 'signs'), '4/4')).toMatchObject({ phrase, problems: [] });
      expect(phrase.length).toBe(2 * 1920);
      const last = phrase.notes.at(-1);
      expect((last?.at ?? 0) + (last?.length ?? 0)).toBeLessThanOrEqual(phrase.length - 480);
    },
  );

  it('names in its exercises only calls there are, and plans that are read', () => {
    const names = STARTER_CALLS.map(({ name }) => name);
    for (const { calls, partner } of STARTER_EXERCISES) {
      expect(calls.filter((name) => !names.includes(name))).toEqual([]);
      expect(readPlan(partner.plan ?? '').problem).toBeNull();
    }
  });
});

describe('what is said of a phrase', () => {
  const said = (text: string, technique = NATURAL_NOTES): readonly string[] =>
    checkPhrase(readPhrase(text, '4/4').phrase, { harp, technique, home });

  it.each([
    ["-2 -3'", 'It asks for 3 draw bent a semitone, which you have not switched on.'],
    ['12 -2', 'The harp in hand lacks 12B.'],
    ['-2 4', 'It ends outside the home chord, so it stays open.'],
    ['-2:w+w -3:q -2', '10 beats go by on one breath: put a rest in, so that the air comes back.'],
  ])('%s', (text, sentence) => {
    expect(said(text)).toContain(sentence);
  });
});

describe('a call for the levels of a class', () => {
  it('keeps to what each level reaches, and is whole for the last', () => {
    for (const { phrase } of STARTER_CALLS) {
      for (const level of CLASS_LEVELS) {
        const own = forLevel(phrase, level, harp);
        const { notes, missing } = onHarp(own, harp);
        expect(missing).toEqual([]);
        expect(notes.length).toBeGreaterThan(0);
        const sounds = notes.flatMap((note) => note.sounds);
        expect(sounds.every((sound) => isInReach(sound, level.technique))).toBe(true);
        expect(
          notes.every(({ sounds: each }) => each.every(({ breath }) => breath === each[0]?.breath)),
        ).toBe(true);
      }
      const whole: ClassLevel = { name: '', technique: EVERY_TECHNIQUE, shortest: 0 };
      const [, , last = whole] = CLASS_LEVELS;
      expect(forLevel(phrase, last, harp)).toEqual(phrase);
    }
  });

  it('takes short notes into those before them, and the nearest note for a bend', () => {
    const { phrase } = readPhrase("-2:q -3':e -3 -4:h", '4/4');
    const [first] = CLASS_LEVELS;
    if (first === undefined) throw new Error('no level');
    expect(printPhrase(forLevel(phrase, first, harp), 'signs')).toBe('-2:h -4');
  });
});

describe('a kept phrase', () => {
  const { phrase } = readPhrase('-2:q -3 -4:h', '4/4');
  const [, , kept] = STARTER_CALLS;

  it('comes back from storage as it was', () => {
    for (const each of STARTER_CALLS)
      expect(parseKeptPhrase(JSON.parse(JSON.stringify(each)))).toEqual({ item: each, problems: [] });
  });

  it('keeps what it was when it is changed', () => {
    if (kept === undefined) throw new Error('no call');
    const changed = withNotes(kept, phrase);
    expect(changed.phrase).toEqual(phrase);
    expect(changed.earlier).toEqual([kept.phrase]);
    expect(withNotes(changed, kept.phrase).earlier).toEqual([phrase]);
    expect(withNotes(kept, kept.phrase)).toBe(kept);
  });

  it('is found by every word of name, tags and notes', () => {
    expect(findKept(STARTER_CALLS, 'hall KEY').map(({ name }) => name)).toEqual(['Hall key']);
    expect(findKept(STARTER_CALLS, 'nothing of the kind')).toEqual([]);
  });

  it('never throws on anything, keeps what can be read and says what it left out', () => {
    const value = fc.oneof(
      fc.anything({ withNullPrototype: true }),
      fc.record(
        {
          id: fc.anything(),
          name: fc.oneof(fc.string({ maxLength: 200 }), fc.anything()),
          phrase: fc.oneof(fc.constant(phrase), fc.anything()),
          tags: fc.oneof(fc.array(fc.string()), fc.anything()),
          earlier: fc.anything(),
          level: fc.anything(),
          position: fc.anything(),
        },
        { requiredKeys: [] },
      ),
    );
    fc.assert(
      fc.property(value, (given) => {
        const { item, problems } = parseKeptPhrase(given);
        if (item === null) expect(problems).toHaveLength(1);
        else {
          expect(item.name.length).toBeLessThanOrEqual(PHRASE_LIMITS.name);
          expect(parseKeptPhrase(JSON.parse(JSON.stringify(item)))).toEqual({ item, problems: [] });
        }
      }),
      { numRuns: 500 },
    );
  });
});
