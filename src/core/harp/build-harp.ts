import { asCents, asMidi, type Midi, type PitchClass } from '../theory/units';
import { type Breath, type Harp, type Reed, type Sound, TECHNIQUES, type Tuning } from './harp';

/** Deviations from equal temperament per reed, hole 1 first. */
export interface ReedCents {
  readonly blow: readonly number[];
  readonly draw: readonly number[];
}

/** What a harp is built from. */
export interface HarpSpec {
  readonly tuning: Tuning;
  readonly key: PitchClass;
  /** 0 for the usual range, −1 low, −2 double low, +1 high. */
  readonly octave: number;
  /** Absent means equal temperament. */
  readonly cents?: ReedCents;
  /** Octave stretch in cents an octave: reeds are that much sharper an octave above the middle, and flatter below. */
  readonly stretch?: number;
  /**
   * Holes with a valve for the lower reed: it then bends a semitone by itself, and the overbend, which needs that
   * reed choked in open air, goes (common practice, no source).
   */
  readonly valved?: readonly number[];
}

/** Hole counts built. */
export const HOLES = { fewest: 10, most: 14 } as const;

/** G is the lowest standard key, its blow 1 at G3 = 55; F# the highest, at F#4 = 66 (Wikipedia, "Richter-tuned harmonica"). */
const LOWEST_KEY = 7;
const LOWEST_PITCH = 55;

/** The pitch of the key note of a harp, blow hole 1 on standard tunings: C4 for a C harp of octave 0. */
export const keyPitch = (key: PitchClass, octave: number): Midi =>
  asMidi(LOWEST_PITCH + ((key - LOWEST_KEY + 12) % 12) + 12 * octave);

const checkSpec = ({ tuning, key, octave, cents }: HarpSpec): void => {
  const holes = tuning.blow.length;
  if (!(holes >= HOLES.fewest && holes <= HOLES.most)) {
    throw new RangeError(`A harp has ${HOLES.fewest} to ${HOLES.most} holes, got ${holes}`);
  }
  for (const [row, length] of Object.entries({
    'draw reeds': tuning.draw.length,
    'blow cents': cents?.blow.length ?? holes,
    'draw cents': cents?.draw.length ?? holes,
  })) {
    if (length !== holes)
      throw new RangeError(`A harp of ${holes} holes needs ${holes} ${row}, got ${length}`);
  }
  if (!(Number.isInteger(key) && key >= 0 && key < 12)) throw new RangeError(`A key is 0 to 11, got ${key}`);
  if (!Number.isInteger(octave)) throw new RangeError(`An octave is a whole number, got ${octave}`);
};

/** Octave stretch leaves the key note an octave up as it is (blow 4 of the standard layout), the middle of the harp. */
const UNSTRETCHED = 12;

const row = (breath: Breath, { tuning, key, octave, cents, stretch = 0 }: HarpSpec): readonly Reed[] =>
  tuning[breath].map((semitones, i) => ({
    hole: i + 1,
    breath,
    pitch: asMidi(keyPitch(key, octave) + semitones),
    cents: asCents((cents?.[breath][i] ?? 0) + (stretch * (semitones - UNSTRETCHED)) / 12),
  }));

const natural = ({ hole, breath, pitch, cents }: Reed): Sound => ({
  hole,
  breath,
  technique: 'natural',
  bend: 0,
  pitch,
  cents,
});

/** A bent note's pitch is the player's to place, whatever the reed: expected on the equal-tempered semitone. */
const bent = ({ hole, breath, pitch }: Reed, bend: number): Sound => ({
  hole,
  breath,
  technique: 'bend',
  bend,
  pitch: asMidi(pitch - bend),
  cents: asCents(0),
});

/**
 * What the two reeds of a hole give. The higher reed bends down to a semitone above the lower one; it also speaks
 * as overbend on the other breath, a semitone above its own note. Bend inside, overbend outside the interval: J.
 * Acoust. Soc. Am. 103(4), 1998, doi 10.1121/1.421359; that it is the higher reed: US patent 6,635,814 B2; that
 * the overbend is aimed a semitone up: common practice, no source. Equal reeds have no higher one: neither bends.
 */
export const soundsOfHole = (blow: Reed, draw: Reed, valved = false): readonly Sound[] => {
  const naturals = [natural(blow), natural(draw)];
  if (blow.pitch === draw.pitch) return valved ? [...naturals, bent(blow, 1), bent(draw, 1)] : naturals;
  const [lower, higher] = blow.pitch < draw.pitch ? [blow, draw] : [draw, blow];
  const steps = Math.ceil(higher.pitch - lower.pitch) - 1;
  const bends = Array.from({ length: steps }, (_, i) => bent(higher, i + 1));
  if (valved) return [...naturals, ...bends, bent(lower, 1)];
  const overbend: Sound = {
    hole: higher.hole,
    breath: lower.breath,
    technique: 'overbend',
    bend: 0,
    pitch: asMidi(higher.pitch + 1),
    cents: asCents(0),
  };
  return [...naturals, ...bends, overbend];
};

const byPitch = (a: Sound, b: Sound): number =>
  a.pitch - b.pitch ||
  TECHNIQUES.indexOf(a.technique) - TECHNIQUES.indexOf(b.technique) ||
  a.hole - b.hole ||
  a.breath.localeCompare(b.breath);

/**
 * A harp at its true octave with everything it can sound, lowest first.
 * Throws RangeError when the rows do not match, or on a hole count, key or octave that cannot be.
 *
 * @example
 * const harp = buildHarp({ tuning: RICHTER, key: 0, octave: 0 });
 * pitchName(harp.sounds[0].pitch) // 'C4'
 * harp.sounds.filter(({ technique }) => technique === 'bend').length // 12
 */
export const buildHarp = (spec: HarpSpec): Harp => {
  checkSpec(spec);
  const blow = row('blow', spec);
  const draw = row('draw', spec);
  const valved = new Set(spec.valved);
  const sounds = blow.flatMap((reed, i) => {
    const other = draw[i];
    return other === undefined ? [] : soundsOfHole(reed, other, valved.has(reed.hole));
  });
  return {
    tuning: spec.tuning,
    key: spec.key,
    octave: spec.octave,
    reeds: [...blow, ...draw],
    sounds: sounds.sort(byPitch),
  };
};
