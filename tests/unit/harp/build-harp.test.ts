import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildHarp, keyPitch, soundsOfHole } from '../../../src/core/harp/build-harp';
import type { Breath, Reed } from '../../../src/core/harp/harp';
import { soundId } from '../../../src/core/harp/tab';
import { findTuning, RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { asCents, asMidi, asPitchClass } from '../../../src/core/theory/units';

const reed = (breath: Breath, pitch: number): Reed => ({
  hole: 1,
  breath,
  pitch: asMidi(pitch),
  cents: asCents(0),
});
const hole = (blow: number, draw: number, valved = false): string =>
  soundsOfHole(reed('blow', blow), reed('draw', draw), valved)
    .map((sound) => `${soundId(sound)}=${sound.pitch}`)
    .join(' ');

const anyTuning = fc
  .integer({ min: 10, max: 14 })
  .chain((holes) => {
    const rows = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: holes, maxLength: holes });
    return fc.record({ blow: rows, draw: rows });
  })
  .map((rows) => ({ id: 'own', name: 'Own', ...rows }));

describe('soundsOfHole', () => {
  it.each([
    ['draw higher', 60, 64, "1B=60 1D=64 1D'=63 1D''=62 1D'''=61 1OB=65"],
    ['blow higher', 64, 62, "1B=64 1D=62 1B'=63 1OD=65"],
    ['a semitone apart', 64, 65, '1B=64 1D=65 1OB=66'],
    ['equal', 64, 64, '1B=64 1D=64'],
  ])('%s', (_, blow, draw, sounds) => {
    expect(hole(blow, draw)).toBe(sounds);
  });

  it('a valve lets the lower reed bend and takes the overbend', () => {
    expect(hole(60, 62, true)).toBe("1B=60 1D=62 1D'=61 1B'=59");
    expect(hole(64, 62, true)).toBe("1B=64 1D=62 1B'=63 1D'=61");
    expect(hole(64, 64, true)).toBe("1B=64 1D=64 1B'=63 1D'=63");
  });
});

describe('buildHarp', () => {
  it('obeys the rule of bends and overbends for any reed table', () => {
    fc.assert(
      fc.property(
        anyTuning,
        fc.integer({ min: 0, max: 11 }),
        fc.integer({ min: -2, max: 1 }),
        (tuning, key, octave) => {
          const harp = buildHarp({ tuning, key: asPitchClass(key), octave });
          for (const [i, blowStep] of tuning.blow.entries()) {
            const base = keyPitch(asPitchClass(key), octave);
            const blow = base + blowStep;
            const draw = base + (tuning.draw[i] ?? 0);
            const [low, high] = [Math.min(blow, draw), Math.max(blow, draw)];
            const here = harp.sounds.filter((sound) => sound.hole === i + 1);
            const bends = here.filter(({ technique }) => technique === 'bend');
            const overbends = here.filter(({ technique }) => technique === 'overbend');
            expect(bends.map(({ pitch }) => pitch)).toEqual(
              Array.from({ length: Math.max(0, high - low - 1) }, (_, n) => low + 1 + n),
            );
            for (const each of bends) {
              expect(each.breath).toBe(draw > blow ? 'draw' : 'blow');
              expect(each.pitch + each.bend).toBe(high);
            }
            expect(overbends.map(({ pitch, breath }) => `${pitch} ${breath}`)).toEqual(
              blow === draw ? [] : [`${high + 1} ${draw > blow ? 'blow' : 'draw'}`],
            );
            expect(here.filter(({ technique }) => technique === 'natural')).toHaveLength(2);
          }
          const pitches = harp.sounds.map(({ pitch }) => pitch);
          expect(pitches).toEqual([...pitches].sort((a, b) => a - b));
          expect(new Set(harp.sounds.map(soundId)).size).toBe(harp.sounds.length);
          expect(JSON.parse(JSON.stringify(harp))).toEqual(harp);
        },
      ),
    );
  });

  it('keeps the cents of reeds on natural notes only', () => {
    const flat = Array.from({ length: 10 }, () => -14);
    const harp = buildHarp({
      tuning: RICHTER,
      key: asPitchClass(0),
      octave: 0,
      cents: { blow: flat, draw: flat },
    });
    expect(new Set(harp.sounds.map(({ technique, cents }) => `${technique} ${cents}`))).toEqual(
      new Set(['natural -14', 'bend 0', 'overbend 0']),
    );
  });

  it('refuses what is no harp, naming bound and value', () => {
    const spec = { tuning: RICHTER, key: asPitchClass(0), octave: 0 };
    const nine = { ...RICHTER, blow: RICHTER.blow.slice(1), draw: RICHTER.draw.slice(1) };
    expect(() => buildHarp({ ...spec, tuning: nine })).toThrow('10 to 14 holes, got 9');
    expect(() => buildHarp({ ...spec, tuning: { ...RICHTER, draw: nine.draw } })).toThrow(
      'needs 10 draw reeds, got 9',
    );
    expect(() => buildHarp({ ...spec, cents: { blow: [], draw: RICHTER.draw } })).toThrow(
      '10 blow cents, got 0',
    );
    expect(() => buildHarp({ ...spec, octave: 0.5 })).toThrow('whole number, got 0.5');
  });
});

describe('TUNINGS', () => {
  it('are ten-hole tables with words and evidence, standard first, found by id', () => {
    expect(RICHTER.id).toBe('richter');
    for (const tuning of TUNINGS) {
      expect([tuning.blow.length, tuning.draw.length]).toEqual([10, 10]);
      expect(tuning.description).toMatch(/^[A-Z].*\.$/);
      expect(tuning.evidence).not.toBe('');
      expect(findTuning(tuning.id)).toBe(tuning);
    }
    expect(new Set(TUNINGS.map(({ id }) => id)).size).toBe(TUNINGS.length);
    expect(findTuning('none')).toBeNull();
  });
});
