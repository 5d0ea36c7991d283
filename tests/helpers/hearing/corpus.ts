/** The corpus: takes of harps, players, rooms and bands that never were, all made from a seed. */
import { roomImpulse } from '../../../src/audio/mixer/room';
import { buildHarp } from '../../../src/core/harp/build-harp';
import type { Harp } from '../../../src/core/harp/harp';
import { INTONATION_IDS, intonate } from '../../../src/core/harp/intonation';
import { songKey } from '../../../src/core/harp/positions';
import { RICHTER, TUNINGS } from '../../../src/core/harp/tunings';
import { createRandom, pick, type Random, seedFrom } from '../../../src/core/theory/random';
import { asPitchClass } from '../../../src/core/theory/units';
import { renderBand } from './band-sound';
import { amplitude, between, betweenRatios, happens, weighted } from './chance';
import { performForeign } from './foreign';
import { type LineKind, planLine } from './lines';
import { perform } from './perform';
import { createReeds } from './reed';
import { activeLevel, convolve, delayed, filter, section } from './space';
import type { Take } from './take';

export interface TakeSpec {
  readonly seed: number;
  readonly kind: LineKind;
  readonly seconds: number;
  /** Level of the band at the microphone re the harp, dB; null without a band. Both are taken while they sound. */
  readonly leak: number | null;
  /** A harp of one's own; by chance when absent. */
  readonly harp?: Harp;
  /** Other music at the same place, with the same harp; that of the seed when absent. */
  readonly music?: number;
  /** Path of a General MIDI sound set whose harmonica plays instead of our reed model. */
  readonly set?: string;
}

/** A harp by chance: most are standard ones in equal temperament, as most players have. */
export const anyHarp = (seed: number): Harp => {
  const random = createRandom(seedFrom(seed, 'harp'));
  const tuning = happens(random, 0.7) ? RICHTER : pick(random, TUNINGS);
  const id = happens(random, 0.6) ? 'equal' : pick(random, INTONATION_IDS);
  return buildHarp({
    tuning,
    key: asPitchClass(Math.floor(12 * random())),
    octave: happens(random, 0.06) ? -1 : 0,
    cents: intonate(tuning, id).cents,
  });
};

/** A response that begins with the direct sound; the room adds so many dB of its own. */
const roomed = (samples: Float32Array, sampleRate: number, random: Random, level: number): Float32Array => {
  const seconds = between(random, 0.18, 0.5);
  const { left } = roomImpulse({ sampleRate, seed: Math.floor(1e6 * random()), seconds });
  const impulse = left.map((value) => value * amplitude(level));
  impulse[0] += 1;
  return convolve(samples, impulse);
};

const at = (samples: Float32Array, level: number, sampleRate: number): Float32Array => {
  const active = activeLevel(samples, sampleRate);
  const gain = active > 0 ? amplitude(level) / active : 0;
  return samples.map((value) => value * gain);
};

/** How the band comes back: a cheap speaker, air, a room, and a clock that is not quite the microphone's. */
const leaked = (band: Float32Array, sampleRate: number, random: Random): Float32Array => {
  const speaker = filter(band, [
    section('highpass', { hz: betweenRatios(random, 120, 420), q: between(random, 0.6, 1.2) }, sampleRate),
    section(
      'peak',
      { hz: betweenRatios(random, 600, 4000), q: 1.5, gain: between(random, -4, 6) },
      sampleRate,
    ),
    section('lowpass', { hz: betweenRatios(random, 5000, 13000), q: 0.7 }, sampleRate),
  ]);
  const late = delayed(speaker, {
    seconds: between(random, 0.008, 0.09),
    drift: between(random, -40, 40),
    sampleRate,
  });
  return roomed(late, sampleRate, random, between(random, -10, 2));
};

const NOISE = { quiet: -80, loud: -52 } as const;

/** The noise of room and microphone, and perhaps a hum. */
const addNoise = (samples: Float32Array, sampleRate: number, random: Random): Float32Array => {
  const level = amplitude(between(random, NOISE.quiet, NOISE.loud));
  const hum = happens(random, 0.4) ? amplitude(between(random, -75, -48)) : 0;
  const mains = happens(random, 0.5) ? 50 : 60;
  let low = 0;
  return samples.map((value, i) => {
    const white = (random() - random()) * 2.4;
    low = 0.97 * low + 0.25 * white;
    const turn = (2 * Math.PI * mains * i) / sampleRate;
    const buzz = Math.sin(turn) + 0.5 * Math.sin(2 * turn) + 0.4 * Math.sin(3 * turn);
    return value + level * (0.5 * white + low) + hum * buzz;
  });
};

/** Low cut of the microphone; of a telephone's, now and then, below which it hears little. */
const microphone = (samples: Float32Array, sampleRate: number, random: Random): Float32Array => {
  const hz = happens(random, 0.2) ? between(random, 150, 220) : between(random, 30, 90);
  return filter(samples, [section('highpass', { hz, q: 0.7 }, sampleRate)]);
};

/** Makes a take. The same specification always gives the same one. */
export const makeTake = (spec: TakeSpec): Take => {
  const { seed, kind, seconds, leak, set, harp = anyHarp(seed), music = seed } = spec;
  // A calibration is played where the grips are.
  const random = createRandom(seedFrom(seed, 'take', kind === 'naturals' ? 'grips' : kind));
  const sampleRate = happens(random, 0.5) ? 48000 : 44100;
  const reference = pick(random, [440, 440, 441, 442, 443]);
  const position = weighted(random, [
    [1, 3],
    [2, 5],
    [3, 3],
    [12, 1],
    [4, 1],
    [5, 1],
  ]);
  const plan = planLine({ kind, harp, position, seconds, seed: music });
  const player = { harp, reference, reeds: createReeds(seed), seed };
  const played =
    set === undefined
      ? perform(plan, player, { seconds, sampleRate, tail: 0.35 })
      : performForeign(plan, player, { seconds, sampleRate, set });
  const room = between(random, -26, -9);
  const harpAt = at(roomed(played.samples, sampleRate, random, room), between(random, -34, -14), sampleRate);
  const noisy = addNoise(harpAt, sampleRate, random);
  const key = songKey(harp.key, position);
  const band = leak === null ? null : renderBand({ seed, key, seconds, sampleRate, reference });
  if (band !== null && leak !== null) {
    const level = 20 * Math.log10(activeLevel(harpAt, sampleRate)) + leak;
    const back = at(leaked(band, sampleRate, createRandom(seedFrom(seed, 'leak'))), level, sampleRate);
    for (let i = 0; i < noisy.length; i += 1) noisy[i] += back[i];
  }
  const { notes, track } = played;
  return {
    name: `${kind} ${seed}${leak === null ? '' : ` ${leak} dB`}`,
    sampleRate,
    samples: microphone(noisy, sampleRate, random).map((value) => Math.max(-1, Math.min(1, value))),
    band,
    harp,
    reference,
    notes,
    track,
  };
};
