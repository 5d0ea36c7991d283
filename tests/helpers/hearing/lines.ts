/** What is played: lines over a harp in a position, made by chance like a player's noodling, and studies. */
import type { Harp, Sound } from '../../../src/core/harp/harp';
import { positionAt } from '../../../src/core/harp/positions';
import { createRandom, pick, type Random, seedFrom } from '../../../src/core/theory/random';
import { asPitchClass } from '../../../src/core/theory/units';
import { between, happens, normal, weighted } from './chance';
import { aimOf, type PathStep, type PlannedNote } from './gesture';
import { type Habits, habitsOf, noteOf } from './habits';

export type LineKind = 'line' | 'repeats' | 'bends' | 'held' | 'grips' | 'failures' | 'naturals';

export const LINE_KINDS: readonly LineKind[] = [
  'line',
  'repeats',
  'bends',
  'held',
  'grips',
  'failures',
  'naturals',
];

export interface LinePlan {
  readonly kind: LineKind;
  readonly harp: Harp;
  readonly position: number;
  readonly seconds: number;
  readonly seed: number;
}

/** Blues and mixolydian steps above the song key; what lies outside is used now and then. */
const STEPS: ReadonlySet<number> = new Set([0, 2, 3, 4, 5, 6, 7, 9, 10]);
const FIRST_SECOND = 0.6;

const EASE = { natural: 1, bend: 0.5, overbend: 0.12 } as const;

/** The next sound of a walk: near in pitch as a rule, the same again now and then, a leap at times. */
const nextSound = (from: Sound, { harp, position }: LinePlan, random: Random): Sound => {
  const tonic = harp.key + positionAt(position).offset;
  const leaps = happens(random, 0.15);
  return weighted(
    random,
    harp.sounds.map((sound) => {
      const distance = Math.abs(sound.pitch - from.pitch);
      const near = leaps
        ? distance === 12 || distance === 19 || distance === 7
          ? 1
          : 0.15
        : distance === 0
          ? 0.5
          : Math.exp(-distance / 3);
      const inScale = STEPS.has(asPitchClass(sound.pitch - tonic)) ? 1 : 0.2;
      return [sound, near * inScale * EASE[sound.technique]] as const;
    }),
  );
};

/** The other sounds a breath can glide to in the hole. */
const bendsBeside = (sound: Sound, harp: Harp): readonly Sound[] =>
  sound.technique === 'overbend'
    ? []
    : harp.sounds.filter(
        (other) =>
          other.hole === sound.hole &&
          other.breath === sound.breath &&
          other.technique !== 'overbend' &&
          other.bend !== sound.bend,
      );

/** Bends a long note on, or lets it up, and perhaps back; every pitch is held for a while. */
const withPath = (note: PlannedNote, plan: LinePlan, habits: Habits, random: Random): PlannedNote => {
  const [start] = note.sounds;
  const path: PathStep[] = [];
  let sound = start;
  let at = between(random, 0.16, 0.4);
  while (at + 0.4 < note.length && path.length < 3) {
    const others = bendsBeside(sound, plan.harp);
    if (others.length === 0) break;
    sound = pick(random, others);
    const seconds = between(random, 0.05, 0.22);
    const cents = 100 * (sound.pitch - start.pitch) + aimOf(sound, habits.spread, random) - note.aim;
    path.push({ at, seconds, sound, cents });
    at += seconds + between(random, 0.16, 0.45);
  }
  return path.length === 0 ? note : { ...note, path, approach: null, vibrato: null };
};

/** How long after the note before the next may begin, by what changes; null when it goes on in one breath. */
const gapBefore = (sound: Sound, before: Sound | null, habits: Habits, random: Random): number | null => {
  if (before === null) return 0;
  if (before.breath !== sound.breath) return between(random, 0.012, 0.06);
  const slide = before.hole !== sound.hole && happens(random, habits.legato);
  return slide ? null : between(random, 0.02, 0.07);
};

const LENGTHS: readonly (readonly [beats: number, weight: number])[] = [
  [1 / 3, 3],
  [2 / 3, 3],
  [1 / 2, 3],
  [1, 3],
  [1 / 4, 1],
  [2, 1],
];

const walk = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = habitsOf(random);
  const notes: PlannedNote[] = [];
  let sound = pick(
    random,
    plan.harp.sounds.filter(({ technique }) => technique === 'natural'),
  );
  let before: Sound | null = null;
  let at = FIRST_SECOND;
  while (true) {
    const beats = weighted(random, LENGTHS);
    const whole = Math.max(0.1, beats * habits.beat);
    if (at + whole > plan.seconds - 0.3) return notes;
    const gap = gapBefore(sound, before, habits, random);
    const last = notes.at(-1);
    if (last !== undefined && before !== null) {
      // The breath before ends where the next needs it to.
      const room = at - last.at - (gap ?? 0);
      notes[notes.length - 1] = { ...last, length: Math.min(last.length, Math.max(0.06, room)) };
    }
    const held = gap === null ? whole : whole * between(random, 0.75, 1);
    const made = noteOf(sound, at, held, habits, random);
    const slid: PlannedNote = gap === null ? { ...made, attack: 'legato', approach: null } : made;
    const bent = whole > 0.6 && happens(random, habits.glides) ? withPath(slid, plan, habits, random) : slid;
    notes.push(bent);
    before = bent.path.at(-1)?.sound ?? sound;
    at += whole * (1 + 0.02 * normal(random));
    if (happens(random, 0.12)) {
      at += habits.beat * between(random, 0.3, 1);
      before = null;
    }
    sound = nextSound(before ?? sound, plan, random);
  }
};

/** Runs of one note, tongued. */
const repeats = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = { ...habitsOf(random), scoops: 0.1 };
  const notes: PlannedNote[] = [];
  let at = FIRST_SECOND;
  while (at < plan.seconds - 1) {
    const sound = weighted(
      random,
      plan.harp.sounds.map((each) => [each, EASE[each.technique]] as const),
    );
    const step = between(random, 0.125, 0.4);
    const count = Math.floor(between(random, 3, 9));
    for (let i = 0; i < count && at + step < plan.seconds - 0.3; i += 1) {
      const gap = Math.min(between(random, 0.02, 0.08), 0.4 * step);
      notes.push({ ...noteOf(sound, at, step - gap, habits, random), attack: 'tongue' });
      at += step * (1 + 0.02 * normal(random));
    }
    at += between(random, 0.1, 0.6);
  }
  return notes;
};

const spaced = (
  plan: LinePlan,
  make: (at: number) => { readonly note: PlannedNote; readonly rest: number },
): readonly PlannedNote[] => {
  const notes: PlannedNote[] = [];
  for (let at = FIRST_SECOND; ; ) {
    const { note, rest } = make(at);
    if (at + note.length > plan.seconds - 0.3) return notes;
    notes.push(note);
    at += note.length + rest;
  }
};

const held = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = { ...habitsOf(random), vibrato: 0.5 };
  return spaced(plan, (at) => ({
    note: noteOf(pick(random, plan.harp.sounds), at, between(random, 0.7, 1.6), habits, random),
    rest: between(random, 0.05, 0.4),
  }));
};

/** Practising bends: down to the target slowly, and held. */
const bends = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = { ...habitsOf(random), spread: 25, vibrato: 0 };
  const bent = plan.harp.sounds.filter(({ technique }) => technique === 'bend');
  return spaced(plan, (at) => {
    const target = pick(random, bent);
    const natural = plan.harp.sounds.find(
      ({ hole, breath, technique }) =>
        technique === 'natural' && hole === target.hole && breath === target.breath,
    );
    const length = between(random, 1.2, 2.2);
    if (natural === undefined || happens(random, 0.3))
      return { note: noteOf(target, at, length, habits, random), rest: between(random, 0.1, 0.4) };
    const note = { ...noteOf(natural, at, length, habits, random), approach: null };
    const cents = 100 * (target.pitch - natural.pitch) + aimOf(target, habits.spread, random);
    const step = {
      at: between(random, 0.25, 0.5),
      seconds: between(random, 0.08, 0.4),
      sound: target,
      cents,
    };
    return { note: { ...note, path: [step] }, rest: between(random, 0.1, 0.4) };
  });
};

/** Neighbours under open lips, or the outer holes of a stretch with the tongue between; some single notes. */
const grips = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = { ...habitsOf(random), vibrato: 0, hands: 0, scoops: 0 };
  const holes = plan.harp.reeds.length / 2;
  return spaced(plan, (at) => {
    const width = weighted(random, [
      [1, 2],
      [2, 3],
      [3, 4],
      [4, 2],
      [5, 1],
    ]);
    const breath = happens(random, 0.5) ? 'blow' : 'draw';
    const first = 1 + Math.floor(random() * (holes - width + 1));
    const split = width >= 3 && happens(random, 0.4);
    const covered = Array.from({ length: width }, (_, i) => first + i).filter(
      (_, i) => !split || i === 0 || i === width - 1,
    );
    const sounds = covered.flatMap((hole) =>
      plan.harp.sounds.filter(
        (each) => each.technique === 'natural' && each.hole === hole && each.breath === breath,
      ),
    );
    const note = noteOf(sounds[0], at, between(random, 0.25, 1), habits, random);
    return { note: { ...note, sounds, approach: null }, rest: between(random, 0.04, 0.3) };
  });
};

/** Overbends that do not come, among natural notes. */
const failures = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = habitsOf(random);
  const over = plan.harp.sounds.filter(({ technique }) => technique === 'overbend');
  const plain = plan.harp.sounds.filter(({ technique }) => technique === 'natural');
  return spaced(plan, (at) => {
    const fails = happens(random, 0.5);
    const note = noteOf(pick(random, fails ? over : plain), at, between(random, 0.35, 0.9), habits, random);
    const failed = fails ? pick(random, ['squeal', 'choke', 'waver'] as const) : null;
    return { note: { ...note, failed, approach: null }, rest: between(random, 0.15, 0.5) };
  });
};

/** Every natural note once, plainly, as for a calibration. */
const naturals = (plan: LinePlan, random: Random): readonly PlannedNote[] => {
  const habits = { ...habitsOf(random), scoops: 0, vibrato: 0, hands: 0 };
  const sounds = plan.harp.sounds.filter(({ technique }) => technique === 'natural');
  return sounds
    .map((sound, i) => noteOf(sound, FIRST_SECOND + 0.6 * i, 0.45, habits, random))
    .filter(({ at, length }) => at + length < plan.seconds - 0.3);
};

const MAKERS = { line: walk, repeats, bends, held, grips, failures, naturals } as const;

/** The notes of a line or study, in the order of their times. */
export const planLine = (plan: LinePlan): readonly PlannedNote[] =>
  MAKERS[plan.kind](plan, createRandom(seedFrom(plan.seed, 'line', plan.kind)));
