/**
 * The impulse response of a small, warm practice room: the first reflections of a box with a carpet and curtains, then a
 * dense tail whose highs die first. Reverberation only: the direct sound is the dry signal of the mixer.
 */
import { createRandom, type Random, seedFrom } from '../../core/theory/random';
import { addNoiseBand, whiteNoise } from '../drums/drum-noise';

/** What a room is like. */
export interface RoomShape {
  readonly sampleRate: number;
  /** Another seed is another room of the same kind. */
  readonly seed: number;
  /** Reverberation time (T60) at 500 Hz–1 kHz, and length of the response. 0.1–2, usually 0.35–0.5. */
  readonly seconds: number;
  /** Share of the energy in the first reflections, 0–1. */
  readonly early?: number;
}

/** A room’s answer to an impulse, left and right. */
export interface RoomImpulse {
  readonly left: Float32Array;
  readonly right: Float32Array;
}

type Point = readonly [x: number, y: number, z: number];

/** Metres: a room for five players, the band at one end and the listener's ears 0.2 m apart at the other. */
const ROOM: Point = [5.6, 4.1, 2.7];
const BAND: Point = [1.4, 2.2, 1.1];
const EARS: readonly [left: Point, right: Point] = [
  [4.1, 1.8, 1.2],
  [4.1, 2.0, 1.2],
];
const ROOM_SPREAD = 0.08;
/** Metres per second at 20 °C. */
const SPEED_OF_SOUND = 343;
/** Pressure left after one reflection off a furnished wall. */
const REFLECTION = 0.8;
/** Images of the source up to this many reflections. */
const REFLECTIONS = 2;
const DEFAULT_EARLY = 0.35;

/**
 * The tail in octaves: level in dB (nothing below 100 Hz, where it would thicken the bass, and a slope like that of
 * air and cloth above 2 kHz) and T60 as a multiple of the room's. By design, no source.
 */
const TAIL: readonly (readonly [hz: number, level: number, decay: number])[] = [
  [180, -5, 1.1],
  [360, -1, 1.05],
  [720, 0, 1],
  [1440, -1, 0.95],
  [2880, -4, 0.8],
  [5760, -10, 0.6],
];
/** The tail swells while reflections grow dense. */
const TAIL_RISE_SECONDS = 0.018;
/** Early reflections pass a band of these corners. */
const EARLY_BAND = { low: 140, high: 4500 };
const FADE_SHARE = 0.1;

const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);

/** Position of the source mirrored `n` times along a wall pair of the given spacing. */
const mirrored = (position: number, spacing: number, n: number): number =>
  n * spacing + (n % 2 === 0 ? position : spacing - position);

/** Delays (seconds after the direct sound) and strengths of the reflections at one ear. */
const reflections = (room: Point, ear: Point): { readonly delay: number; readonly gain: number }[] => {
  const direct = distance(BAND, ear);
  const orders = Array.from({ length: 2 * REFLECTIONS + 1 }, (_, i) => i - REFLECTIONS);
  return orders.flatMap((nx) =>
    orders.flatMap((ny) =>
      orders
        .map((nz) => ({ nz, bounces: Math.abs(nx) + Math.abs(ny) + Math.abs(nz) }))
        .filter(({ bounces }) => bounces >= 1 && bounces <= REFLECTIONS)
        .map(({ nz, bounces }) => {
          const image: Point = [
            mirrored(BAND[0], room[0], nx),
            mirrored(BAND[1], room[1], ny),
            mirrored(BAND[2], room[2], nz),
          ];
          const path = distance(image, ear);
          return {
            delay: (path - direct) / SPEED_OF_SOUND,
            gain: (REFLECTION ** bounces * direct) / path,
          };
        }),
    ),
  );
};

/** A low-pass of two poles and a high-pass of one, in place. */
const bandLimit = (samples: Float64Array, sampleRate: number): void => {
  const smooth = Math.exp((-2 * Math.PI * EARLY_BAND.high) / sampleRate);
  const slow = Math.exp((-2 * Math.PI * EARLY_BAND.low) / sampleRate);
  let softer = 0;
  let low = 0;
  let base = 0;
  for (let i = 0; i < samples.length; i += 1) {
    softer = (1 - smooth) * (samples[i] ?? 0) + smooth * softer;
    low = (1 - smooth) * softer + smooth * low;
    base = (1 - slow) * low + slow * base;
    samples[i] = low - base;
  }
};

const earlyPart = (length: number, sampleRate: number, room: Point, ear: Point): Float64Array => {
  const out = new Float64Array(length);
  for (const { delay, gain } of reflections(room, ear)) {
    const at = delay * sampleRate;
    const i = Math.floor(at);
    if (i + 1 >= length) continue;
    out[i] = (out[i] ?? 0) + gain * (1 - (at - i));
    out[i + 1] = (out[i + 1] ?? 0) + gain * (at - i);
  }
  bandLimit(out, sampleRate);
  return out;
};

const tailPart = (length: number, sampleRate: number, seconds: number, random: Random): Float64Array => {
  const out = new Float64Array(length);
  const noise = whiteNoise(random, length * 2);
  TAIL.forEach(([hz, level, decay], i) => {
    const band = { hz, strike: 0, strikeT60: 1, ring: 10 ** (level / 20), ringT60: seconds * decay };
    addNoiseBand(out, sampleRate, band, { noise, offset: Math.floor((i * noise.length) / TAIL.length) });
  });
  const rise = Math.round(TAIL_RISE_SECONDS * sampleRate);
  for (let i = 0; i < Math.min(rise, length); i += 1)
    out[i] = (out[i] ?? 0) * (0.5 - 0.5 * Math.cos((Math.PI * i) / rise));
  return out;
};

const scaledTo = (samples: Float64Array, energy: number): Float64Array => {
  const sum = samples.reduce((total, value) => total + value * value, 0);
  const gain = sum > 0 ? Math.sqrt(energy / sum) : 0;
  return samples.map((value) => value * gain);
};

const fadedOut = (samples: Float64Array): Float64Array => {
  const fade = Math.ceil(samples.length * FADE_SHARE);
  return samples.map((value, i) => {
    const left = (samples.length - 1 - i) / fade;
    return left >= 1 ? value : value * (0.5 - 0.5 * Math.cos(Math.PI * left));
  });
};

const bounded = (value: number, low: number, high: number, name: string): number => {
  if (!(value >= low && value <= high)) throw new RangeError(`${name} must be ${low}–${high}, got ${value}`);
  return value;
};

/**
 * Left and right response of the room, each of energy 1 (the sum of its squared samples), so that white noise comes back
 * as loud as it went in. The sides share nothing but the room: their tails are independent noise.
 * Throws RangeError for a length outside 0.1–2 s, a share outside 0–1 or a sample rate outside 4000–192000 Hz.
 */
export const roomImpulse = ({ sampleRate, seed, seconds, early = DEFAULT_EARLY }: RoomShape): RoomImpulse => {
  const length = Math.round(
    bounded(seconds, 0.1, 2, 'seconds') * bounded(sampleRate, 4000, 192000, 'sampleRate'),
  );
  bounded(early, 0, 1, 'early');
  const shape = createRandom(seedFrom(seed, 'room'));
  const stretch = (metres: number): number => metres * (1 + ROOM_SPREAD * (2 * shape() - 1));
  const room: Point = [stretch(ROOM[0]), stretch(ROOM[1]), stretch(ROOM[2])];
  const side = (ear: Point, name: string): Float32Array => {
    const first = scaledTo(earlyPart(length, sampleRate, room, ear), early);
    const random = createRandom(seedFrom(seed, 'room', name));
    const tail = scaledTo(tailPart(length, sampleRate, seconds, random), 1 - early);
    const both = first.map((value, i) => value + (tail[i] ?? 0));
    return Float32Array.from(scaledTo(fadedOut(both), 1));
  };
  return { left: side(EARS[0], 'left'), right: side(EARS[1], 'right') };
};
