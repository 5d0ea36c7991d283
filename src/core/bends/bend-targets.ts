import type { Harp, Sound } from '../harp/harp';

/** The reed that a sound starts from: a bend from its natural note, an overbend from the other reed of its hole. */
export const naturalOf = (sound: Sound, harp: Harp): Sound | null =>
  harp.sounds.find(
    ({ hole, breath, technique }) =>
      hole === sound.hole && breath === sound.breath && technique === 'natural',
  ) ?? null;

/** The deepest bend of a sound's hole and breath; null where it has none. */
export const floorOf = (sound: Sound, harp: Harp): Sound | null =>
  harp.sounds
    .filter(
      ({ hole, breath, technique }) => hole === sound.hole && breath === sound.breath && technique === 'bend',
    )
    .reduce<Sound | null>(
      (deepest, each) => (deepest === null || each.bend > deepest.bend ? each : deepest),
      null,
    );

/** Holes that a technique is begun on: others follow by their distance (common practice, no source). */
const FIRST = { draw: 4, overblow: 6, overdraw: 7 } as const;

/** Stages in which techniques are learnt; within one, `places` are compared in turn. */
const placeOf = (sound: Sound, harp: Harp): readonly number[] => {
  const { hole, breath, technique, bend } = sound;
  if (technique === 'overbend') {
    return breath === 'blow' ? [2, Math.abs(hole - FIRST.overblow)] : [3, Math.abs(hole - FIRST.overdraw)];
  }
  const depth = floorOf(sound, harp)?.bend ?? bend;
  return breath === 'draw' ? [0, depth, Math.abs(hole - FIRST.draw), hole, -bend] : [1, depth, hole, -bend];
};

/**
 * Every bend and overbend of a harp in an order that teaches: draw bends of holes that go down a semitone, nearest to
 * hole 4 first, then of two, then of three; blow bends; overblows from hole 6 on, then overdraws. Within a hole the
 * deepest first, which gives the feel, then the steps between. That a shallow middle hole comes first: a beginners'
 * guide's article on draw bends in the middle register (dummies.com, article 203416); that hole 3 comes last of the low
 * ones: a lesson page on bending; overblow 6 before 5 and 4: the same guide's article 146600; the rest is common
 * practice, no source.
 *
 * @example
 * const harp = buildHarp({ tuning: RICHTER, key: 0, octave: 0 });
 * bendTargets(harp).slice(0, 3).map((sound) => tab(sound, 'letters')) // ["4D'", "6D'", "1D'"]
 */
export const bendTargets = (harp: Harp): readonly Sound[] =>
  harp.sounds
    .filter(({ technique }) => technique !== 'natural')
    .map((sound) => ({ sound, places: placeOf(sound, harp) }))
    .sort((a, b) => {
      const differing = a.places.findIndex((place, i) => place !== b.places[i]);
      return (a.places[differing] ?? 0) - (b.places[differing] ?? 0);
    })
    .map(({ sound }) => sound);
