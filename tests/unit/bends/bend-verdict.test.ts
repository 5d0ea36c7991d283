import { describe, expect, it } from 'vitest';
import type { BendLevel } from '../../../src/core/bends/bend-choice';
import { bendTask, type Exercise } from '../../../src/core/bends/bend-exercise';
import { createBendListener } from '../../../src/core/bends/bend-listener';
import { type BendVerdict, isHit, judgeBend } from '../../../src/core/bends/bend-verdict';
import { verdictWords } from '../../../src/core/bends/bend-words';
import { findPlateaus, type PitchMoment } from '../../../src/core/bends/plateaus';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { soundId } from '../../../src/core/harp/tab';
import { TUNINGS } from '../../../src/core/harp/tunings';
import type { PitchFrame } from '../../../src/core/hearing/pitch-frame';
import { asHz, asPitchClass, asSeconds } from '../../../src/core/theory/units';

const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });

const taskFor = (id: string, exercise: Exercise = 'hold', level: BendLevel = 'developing', tonic = 0) => {
  const target = harp.sounds.find((sound) => soundId(sound) === id);
  if (target === undefined) throw new Error(`The harp has no ${id}`);
  return bendTask(target, { harp, reference: asHz(440), exercise, level, tonic: asPitchClass(tonic) });
};

/** Hops of the ear: 256 samples at 48 kHz. */
const HOP = 256 / 48_000;

/** Corners of a way, as seconds and cents from the target; null is silence until the next corner. */
type Corner = readonly [number, number | null];
const way = (...corners: readonly Corner[]): readonly PitchMoment[] => {
  const moments: PitchMoment[] = [];
  for (const [i, [from, start]] of corners.entries()) {
    const [to, end] = corners[i + 1] ?? [from, null];
    if (start === null) continue;
    for (let time = from; time < to; time += HOP) {
      moments.push({ time, cents: start + ((end ?? start) - start) * ((time - from) / (to - from)) });
    }
  }
  return moments;
};
const swung = (moments: readonly PitchMoment[], cents: number, rate: number): readonly PitchMoment[] =>
  moments.map(({ time, cents: from }) => ({
    time,
    cents: from + cents * Math.sin(2 * Math.PI * rate * time),
  }));

const say = (verdict: BendVerdict): string => {
  if ('cents' in verdict) {
    return `${verdict.kind} ${Math.round(verdict.cents)}${verdict.blue ? ` ${verdict.blue}` : ''}`;
  }
  if (verdict.kind === 'dip') return `dip ${Math.round(verdict.fall)}`;
  if (verdict.kind === 'other') return `other ${verdict.sounds.map(soundId).join(' or ')}`;
  return verdict.kind === 'shape' ? `no ${verdict.missing}` : verdict.kind;
};

describe('words on a first bend', () => {
  const plain = harp.sounds.filter((sound) => soundId(sound) === '4D');
  const next = harp.sounds.filter((sound) => soundId(sound) === '5D');

  it('take the plain note for the beginning it is, and no other note', () => {
    const said = (sounds: typeof plain, exercise: Exercise) =>
      verdictWords(taskFor("4D'", exercise), { kind: 'other', sounds });
    expect(said(plain, 'dip')).toMatchObject({ short: 'Still plain' });
    expect(said(next, 'dip').happened).toBe('That was 5 draw.');
    expect(said(plain, 'hold').happened).toBe('That was 4 draw.');
  });
});

describe('the verdict on a bend', () => {
  // 4 draw on a C harp is D5, 293.66 · 2 Hz; its bend C♯5 lies 100 cents below (equal temperament).
  const held = (id: string, cents: number, seconds = 1) =>
    judgeBend(taskFor(id), way([0, cents], [seconds, cents]));

  it.each([
    [0, 'right 0'],
    [-29, 'right -29'],
    [-35, 'flat -35'],
    [35, 'sharp 35'],
    // Nearer to D than to C sharp, and stopped on the way.
    [65, 'dip 35'],
    [100, 'other 4D'],
    [-100, 'other 4B'],
    [800, 'other 6D'],
  ])('held %i cents away is %s', (cents, expected) => {
    expect(say(held("4D'", cents))).toBe(expected);
  });

  it('is nothing for a click, too short for a touch, unsteady for a squeal', () => {
    expect(say(held("4D'", 0, 0.05))).toBe('nothing');
    expect(judgeBend(taskFor("4D'"), [])).toEqual({ kind: 'nothing' });
    expect(say(held("4D'", 5, 0.25))).toBe('short');
    const squeal = way(...Array.from({ length: 12 }, (_, i): Corner => [i * 0.1, i % 2 === 0 ? -400 : 300]));
    expect(say(judgeBend(taskFor('6OB'), squeal))).toBe('unsteady');
  });

  it('allows by level what the published figures do: 50 cents at first, 10 at the last', () => {
    const levels: readonly BendLevel[] = ['first', 'developing', 'secure', 'expert'];
    const at = (cents: number) =>
      levels.map((level) => judgeBend(taskFor("4D'", 'hold', level), way([0, cents], [1, cents])).kind);
    expect(at(-40)).toEqual(['right', 'flat', 'flat', 'flat']);
    expect(at(-25)).toEqual(['right', 'right', 'flat', 'flat']);
    expect(at(-9)).toEqual(['right', 'right', 'right', 'right']);
  });

  it('takes the pitch of a vibrato as its middle, and leaves way in and droop out', () => {
    const vibrato = swung(way([0, 0], [1.2, 0]), 30, 5.5);
    expect(say(judgeBend(taskFor("4D'"), vibrato))).toMatch(/^right -?[0-4]$/);
    const scooped = way([0, -90], [0.12, 0], [1, 0], [1.1, -30]);
    expect(say(judgeBend(taskFor("4D'"), scooped))).toMatch(/^right -?[0-3]$/);
  });

  it('hears a pitch that goes by as no pitch: a slow bend through the target does not stand on it', () => {
    const through = way([0, 300], [0.5, 300], [1.2, -10], [2, -100], [2.6, -100]);
    expect(findPlateaus(through).map(({ cents }) => Math.round(cents))).toEqual([300, -100]);
    expect(
      say(judgeBend(taskFor("3D'''"), way([0, 300], [0.4, 300], [1, 150], [1.1, 300], [1.4, 300]))),
    ).toMatch(/^dip 14\d$/);
  });

  it('names the semitone that stood in place of the one asked for', () => {
    expect(say(held("3D'", -100))).toBe("other 3D''");
    expect(say(held("3D'''", 100))).toBe("other 3D''");
  });

  it('leaves open which of two stood, and takes the one of the hole that is practised', () => {
    // 2 draw and 3 blow of a standard harp are one note, G4 on a C harp; E4 is 2 blow alone.
    const away = (id: string, midi: number) => {
      const task = taskFor(id);
      const cents = 1200 * Math.log2((440 * 2 ** ((midi - 69) / 12)) / task.hz);
      return say(judgeBend(task, way([0, cents], [1, cents])));
    };
    expect([away("4D'", 67), away("2D''", 67), away("4D'", 64)]).toEqual([
      'other 2D or 3B',
      'other 2D',
      'other 2B',
    ]);
  });

  it('is a hit between the semitones, where the song has a blue degree: the neutral third lies between 6/5 and 5/4', () => {
    // In G on a C harp, 3 draw bent a semitone is B flat, the minor third: 300 cents above the tonic.
    const [just, major] = [6 / 5, 5 / 4].map((ratio) => 1200 * Math.log2(ratio));
    const neutral = ((just ?? 0) + (major ?? 0)) / 2 - 300;
    expect(neutral).toBeCloseTo(50.98, 1);
    const inG = judgeBend(taskFor("3D'", 'hold', 'developing', 7), way([0, neutral], [1, neutral]));
    const inC = judgeBend(taskFor("3D'"), way([0, neutral], [1, neutral]));
    expect([say(inG), isHit(inG)]).toEqual(['sharp 51 third', true]);
    // In C the same note is the seventh, measured up to 38 cents above a piano's.
    expect([say(inC), isHit(inC)]).toEqual(['sharp 51', false]);
    const natural = judgeBend(taskFor("3D'", 'hold', 'developing', 7), way([0, 95], [1, 95]));
    expect(isHit(natural)).toBe(false);
  });
});

describe('exercises', () => {
  const judge = (exercise: Exercise, moments: readonly PitchMoment[], id = "4D'") =>
    say(judgeBend(taskFor(id, exercise), moments));
  const slide = way([0, 100], [0.4, 100], [0.6, 0], [1.2, 0]);
  const back = way([0, 100], [0.4, 100], [0.6, 0], [1, 0], [1.2, 100], [1.6, 100]);

  it('a dip is any fall, shown by how far it went; breath alone is none', () => {
    expect(judge('dip', way([0, 100], [0.4, 100], [0.6, 50], [0.8, 50], [1, 100]))).toBe('right 50');
    expect(judge('dip', way([0, 100], [0.4, 80], [1, 90]))).toBe('other 4D');
  });

  it('a slide begins on the natural note, and in and out ends there too', () => {
    expect([judge('slide', slide), judge('slide', way([0, 0], [1, 0]))]).toEqual(['right 0', 'no start']);
    expect([judge('in and out', back), judge('in and out', slide)]).toEqual(['right 0', 'no end']);
  });

  it('cold begins bent', () => {
    expect([judge('cold', way([0, 0], [1, 0])), judge('cold', slide)]).toEqual(['right 0', 'no cold']);
    expect(judge('cold', way([0, -40], [0.08, 0], [1, 0]))).toMatch(/^right/);
  });

  it('settling is counted from leaving the natural note', () => {
    const verdict = judgeBend(taskFor("4D'", 'slide'), slide);
    expect(verdict.kind === 'right' && verdict.settling).toBeGreaterThan(0.05);
    expect(verdict.kind === 'right' && verdict.settling).toBeLessThan(0.2);
  });
});

describe('the listener for one try', () => {
  const task = taskFor("4D'");
  const frames = (moments: readonly PitchMoment[], seconds: number): readonly PitchFrame[] =>
    Array.from({ length: Math.round(seconds / HOP) }, (_, i) => {
      const time = i * HOP;
      const moment = moments.find((each) => Math.abs(each.time - time) < HOP / 2);
      return {
        known: asSeconds(time),
        centre: asSeconds(time),
        frequency: moment === undefined ? 0 : task.hz * 2 ** (moment.cents / 1200),
        clarity: 0.9,
        level: -20,
      };
    });

  it('lets what sounded before its turn pass, waits for the end, and overhears a click', () => {
    const sound = way([0, 100], [0.5, null], [0.8, 0], [0.84, null], [1.5, -35], [2.5, null]);
    const heard = frames(sound, 2.95);
    const listener = createBendListener(task);
    expect(listener.take(heard.slice(0, Math.round(2.6 / HOP)))).toBeNull();
    const verdict = listener.take(heard.slice(Math.round(2.6 / HOP)));
    expect(verdict && say(verdict)).toBe('flat -35');
  });
});
