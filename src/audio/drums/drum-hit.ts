/**
 * One hit of a drum or cymbal from its recipe: modes, bands of noise and, for metal, a cluster of partials.
 * The velocity sets the loudness and how far the highs open; the seed makes each stroke a little different.
 */
import { createRandom, type Random, seedFrom } from '../../core/theory/random';
import { addDampedSines, type DampedSine } from '../synthesis/damped-sines';
import { fadeEnd, fromDecibels, scaled } from '../synthesis/envelope';
import { REFERENCE_LOUDNESS_LUFS } from '../synthesis/levels';
import type { VoiceNote } from '../synthesis/voice';
import { cymbalPartials } from './cymbal';
import { hitLoudness } from './drum-level';
import { addGlidingSine, decayOf, type ModeRow } from './drum-modes';
import { addNoiseBand, whiteNoise } from './drum-noise';
import type { DrumRecipe } from './drum-recipe';
import { damp, lowPass, removeDirectCurrent, rise } from './drum-shaping';

/** The velocity at which recipes are written down. */
const RECIPE_VELOCITY = 70;
/** Loudness follows the fourth power of velocity (amplitude its square). */
const LOUDNESS_EXPONENT = 4;
/** Velocity at which `accent` and `open` of a recipe count in full. */
const ACCENT_VELOCITY = 110;
const FADE_SECONDS = 0.02;

/** How far strokes of one sound differ: strike point (dB per mode), phase (radians), level (LU either way). */
const STRIKE_POINT_DECIBELS = 1;
const PHASE_SPREAD = 0.25;
const LEVEL_SPREAD = 0.25;

const around = (random: Random, spread: number): number => (2 * random() - 1) * spread;

interface Stroke {
  readonly random: Random;
  /** −1 … 1 around the recipe's own velocity, in steps of 40. */
  readonly force: number;
  readonly recipe: DrumRecipe;
}

/** dB that a frequency gains over the recipe at this force. */
const opening = ({ force, recipe }: Stroke, hz: number): number =>
  recipe.open * force * Math.max(0, Math.log2(hz / 1000));

/** Harder strokes ring longer, as far as the recipe says; softer ones as written. */
const ringing = ({ force, recipe }: Stroke): number => 1 + (recipe.ring ?? 0) * Math.max(0, force);

const sineOf = (stroke: Stroke, [hz, level, t60, phase = 0]: ModeRow): DampedSine => {
  const wander = around(stroke.random, STRIKE_POINT_DECIBELS) + opening(stroke, hz);
  return {
    frequency: hz,
    amplitude: fromDecibels(level + wander),
    phase: phase + around(stroke.random, PHASE_SPREAD),
    decay: decayOf(t60 * ringing(stroke)),
  };
};

const addTones = (out: Float64Array, sampleRate: number, stroke: Stroke): void => {
  const { recipe } = stroke;
  const sines = recipe.modes.map((row) => sineOf(stroke, row));
  const partials = recipe.cluster ? cymbalPartials(recipe.cluster, recipe.noise) : [];
  addDampedSines(out, [...sines, ...partials.map((row) => sineOf(stroke, row))], sampleRate);
  if (recipe.glide) addGlidingSine(out, sampleRate, sineOf(stroke, recipe.glide.mode), recipe.glide);
};

const addNoise = (out: Float64Array, sampleRate: number, stroke: Stroke): void => {
  const { recipe, random } = stroke;
  const noise = whiteNoise(random, out.length);
  const share = Math.sqrt(1 - (recipe.cluster?.share ?? 0));
  recipe.noise.forEach(([hz, strike, ring, ringT60], i) => {
    const gain = fromDecibels(opening(stroke, hz));
    const band = {
      hz,
      strike: gain * fromDecibels(strike),
      strikeT60: recipe.strikeT60 / 1000,
      ring: gain * share * fromDecibels(ring),
      ringT60: (ringT60 / 1000) * ringing(stroke),
    };
    addNoiseBand(out, sampleRate, band, {
      noise,
      offset: Math.floor((i * noise.length) / recipe.noise.length),
    });
  });
};

/** LU re the electric piano that a velocity asks of a recipe. */
const loudnessAt = (recipe: DrumRecipe, velocity: number): number => {
  const hard = Math.max(0, (velocity - RECIPE_VELOCITY) / (ACCENT_VELOCITY - RECIPE_VELOCITY));
  const law = 10 * LOUDNESS_EXPONENT * Math.log10(velocity / RECIPE_VELOCITY);
  return recipe.loudness + law + (recipe.accent ?? 0) * hard;
};

/** LU re the electric piano of one stroke: by its seed up to `LEVEL_SPREAD` beside what its velocity asks. */
const strokeLevel = (recipe: DrumRecipe, velocity: number, random: Random): number =>
  loudnessAt(recipe, velocity) + around(random, LEVEL_SPREAD);

const randomOf = ({ seed, midi }: VoiceNote): Random => createRandom(seedFrom(seed, 'drum', midi));

/** The momentary loudness in LUFS that `strikeDrum` gives a hit, without computing it. */
export const struckLoudness = (recipe: DrumRecipe, note: VoiceNote): number =>
  REFERENCE_LOUDNESS_LUFS + strokeLevel(recipe, note.velocity, randomOf(note));

/**
 * Computes a hit. Mono; the loudness is that of the recipe for the note's velocity within 0.25 LU, by the seed.
 * Throws RangeError for a velocity outside 1–127 or a sample rate below 8000 Hz.
 */
export const strikeDrum = (recipe: DrumRecipe, note: VoiceNote): Float32Array => {
  const { velocity, sampleRate } = note;
  if (!(velocity >= 1 && velocity <= 127)) throw new RangeError(`velocity must be 1–127, got ${velocity}`);
  if (!(sampleRate >= 8000)) throw new RangeError(`sampleRate must be at least 8000 Hz, got ${sampleRate}`);
  const random = randomOf(note);
  const level = strokeLevel(recipe, velocity, random);
  const force = (velocity - RECIPE_VELOCITY) / (ACCENT_VELOCITY - RECIPE_VELOCITY);
  const stroke = { random, force, recipe };
  const out = new Float64Array(Math.ceil(recipe.seconds * sampleRate));
  addTones(out, sampleRate, stroke);
  rise(out, sampleRate, recipe.rise);
  const noise = new Float64Array(out.length);
  addNoise(noise, sampleRate, stroke);
  rise(noise, sampleRate, recipe.noiseRise ?? recipe.rise);
  for (let i = 0; i < out.length; i += 1) out[i] = (out[i] ?? 0) + (noise[i] ?? 0);
  if (recipe.damp) damp(out, sampleRate, recipe.damp);
  if (recipe.lowPass) lowPass(out, sampleRate, recipe.lowPass.hz * 2 ** (recipe.lowPass.opens * force));
  removeDirectCurrent(out, sampleRate);
  fadeEnd(out, Math.round(FADE_SECONDS * sampleRate));
  return scaled(out, fromDecibels(REFERENCE_LOUDNESS_LUFS + level - hitLoudness(out, sampleRate)));
};
