/**
 * Tonewheel organ: a sine for every drawbar and for the leakage of the neighbouring wheels, a click of the key
 * contacts, and a second, weaker layer a little sharp that beats slowly against the first. Everything repeats after
 * a whole number of periods, so that a held note loops without a seam.
 */
import { createRandom, type Random, seedFrom } from '../../core/theory/random';
import { asSeconds } from '../../core/theory/units';
import { addDampedSines, type DampedSine } from './damped-sines';
import { fromDecibels } from './envelope';
import { BASE_VELOCITY, REFERENCE_LOUDNESS_LUFS, velocityGain } from './levels';
import { LOOP_GUARD, loopLength, loopNoise } from './loop';
import { kWeightedPower, loudnessOfPower } from './loudness';
import { addNoiseBurst } from './noise-burst';
import { ORGAN_DRAWBARS, ORGAN_LOUDNESS } from './organ-tone';
import type { Voice, VoiceNote } from './voice';

const LOOP_SECONDS = 3;
/** By then the onset has died to nothing and the loop may start. */
const LOOP_FROM = 0.25;
/** Time constant of the onset, s. */
const RISE = 0.0054;
/** Level of the second layer re the first, and how far it lies above, cents. */
const LAYER = 0.6;
const LAYER_CENTS = 2;
/** dB per octave of partial that 35 velocity steps add: a swell pedal, pressed a little further. */
const BRIGHTNESS = 0.5;
const CLICK = { level: -23, perVelocity: 2, low: 800, high: 5000, rise: 0.0005, decay: 2400 };
const LEAKAGE = { level: -44, low: 150, high: 2500 };
const LEVEL_SPREAD = 0.4;

interface Wheel {
  readonly frequency: number;
  readonly sharp: number;
  readonly amplitude: number;
  readonly phase: number;
}

/** One wheel for each partial of the 16' stop; both layers turn a whole number of times in a loop. */
const wheelsOf = (note: VoiceNote, fundamental: number, grid: number, random: Random): Wheel[] => {
  const wheels: Wheel[] = [];
  ORGAN_DRAWBARS.forEach((drawbar, i) => {
    const k = i + 1;
    const octaves = (note.midi - 60) / 12;
    const tilt = (BRIGHTNESS * Math.log2(k) * (note.velocity - BASE_VELOCITY)) / 35;
    const turns = (k * fundamental * (2 ** (LAYER_CENTS / 1200) - 1)) / grid;
    wheels.push({
      frequency: k * fundamental,
      sharp: k * fundamental + (k === 6 ? 0 : Math.round(turns + 0.2)) * grid,
      amplitude: fromDecibels(drawbar.level + drawbar.perOctave * octaves + tilt),
      phase: 2 * Math.PI * random(),
    });
  });
  return wheels;
};

const sinesOf = (wheel: Wheel): DampedSine[] => {
  const { frequency, sharp, phase } = wheel;
  const first = wheel.amplitude / (1 + LAYER);
  const second = first * LAYER;
  const onset = (20 * Math.LOG10E) / RISE;
  return [
    { frequency, phase, amplitude: first, decay: 0 },
    { frequency: sharp, phase, amplitude: second, decay: 0 },
    { frequency, phase, amplitude: -(first + second), decay: onset },
  ];
};

/** Computes an organ note; it sounds until it is let go. */
export const organ: Voice = (note) => {
  const { sampleRate } = note;
  const random = createRandom(seedFrom(note.seed, note.midi));
  const loop = loopLength(LOOP_SECONDS, note.hz / 2, sampleRate);
  const wheels = wheelsOf(note, loop.fundamental, sampleRate / loop.samples, random);
  const from = Math.round(LOOP_FROM * sampleRate);
  const out = new Float64Array(from + loop.samples + LOOP_GUARD);
  addDampedSines(out, wheels.flatMap(sinesOf), sampleRate);
  const leakage = loopNoise(random, loop.samples, LEAKAGE, sampleRate);
  const fade = RISE * sampleRate;
  for (let i = 0; i < out.length; i++) {
    const level = i < from ? 1 - Math.exp(-i / fade) : 1;
    out[i] = (out[i] as number) + fromDecibels(LEAKAGE.level) * level * (leakage[i % loop.samples] as number);
  }
  const click = CLICK.level + (CLICK.perVelocity * (note.velocity - BASE_VELOCITY)) / 35;
  addNoiseBurst(out, { ...CLICK, level: fromDecibels(click) }, random, sampleRate);
  const power = wheels.reduce(
    (sum, wheel) => sum + (kWeightedPower(wheel.frequency) * wheel.amplitude ** 2) / 2,
    0,
  );
  const wanted = REFERENCE_LOUDNESS_LUFS + ORGAN_LOUDNESS + LEVEL_SPREAD * (random() - 0.5);
  const gain = velocityGain(note.velocity) ** 1.15 * fromDecibels(wanted - loudnessOfPower(power));
  return {
    samples: Float32Array.from(out, (value) => value * gain),
    loop: { from, to: from + loop.samples },
    release: asSeconds(0.03),
  };
};
