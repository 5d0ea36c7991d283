import { buildHarp } from '../../src/core/harp/build-harp';
import { soundId } from '../../src/core/harp/tab';
import { RICHTER } from '../../src/core/harp/tunings';
import type { EndedNote } from '../../src/core/takes/take-note';
import { asCents, asHz, asPitchClass, asSeconds } from '../../src/core/theory/units';

/** The usual harp in C. */
export const C_HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });

/** A note of the C harp that was heard from one second to another, in tune and steady. */
export const heardNote = (
  [name, from, to]: readonly [name: string, from: number, to: number],
  change: Partial<EndedNote> = {},
): EndedNote => {
  const sound = C_HARP.sounds.find((each) => soundId(each) === name);
  if (sound === undefined) throw new Error(`The harp has no ${name}`);
  return {
    id: Math.round(1000 * from),
    from: asSeconds(from),
    to: asSeconds(to),
    frequency: asHz(440 * 2 ** ((sound.pitch - 69) / 12)),
    level: -20,
    steady: true,
    joined: 'attack',
    vibrato: null,
    movement: { start: asCents(0), settling: asSeconds(0), end: asCents(0) },
    sound,
    together: [],
    alternatives: [],
    pitch: sound.pitch,
    cents: asCents(0),
    offset: asCents(0),
    ...change,
  };
};
