/**
 * Tonewheel organ: a sine for every drawbar and for the leakage of the neighbouring wheels, a click of the key
 * contacts, and a second, weaker layer a little sharp that beats slowly against the first. Everything repeats after
 * a whole number of periods, so that a held note loops without a seam.
 */
import { createRandom, type Random, seedFrom } from '../../core/theory/random';
import { asSeconds } from '../../core/theory/units';
import { hardness } from '../synthesis/brightness';
import { checkNote } from '../synthesis/check-note';
import { addDampedSines, type DampedSine } from '../synthesis/damped-sines';
import { fromDecibels, releaseSeconds, scaled } from '../synthesis/envelope';
import { REFERENCE_LOUDNESS_LUFS, velocityGain } from '../synthesis/levels';
import { addLoopNoise, LOOP_GUARD, loopLength, loopNoise } from '../synthesis/loop';
import { kWeightedPower, loudnessOfPower } from '../synthesis/loudness';
import { addNoiseBurst } from '../synthesis/noise-burst';
import type { Voice, VoiceNote } from '../synthesis/voice';
import { ORGAN_DRAWBARS, ORGAN_LOUDNESS } from './organ-tone';

const LOOP_SECONDS = 3;
/** By then the onset has died to nothing and the loop may start. */
const LOOP_FROM = 0.25;
/** Time constant of the onset, s. */
const RISE = 0.0046;
/** Time to fade when a key is let go at the middle velocity, s. */
const RELEASE = 0.014;
/** Level of the second layer re the first, and how far it lies above, cents. */
const LAYER = 0.6;
const LAYER_CENTS = 2;
/** dB per octave of partial that a step of `hardness` adds: a swell pedal, pressed a little further. */
const BRIGHTNESS = 0.5;
/** The 2⅔' stop sounds from one layer alone. */
const SINGLE_WHEELS: ReadonlySet<number> = new Set([6]);
const CLICK = { level: -21, perHardness: 2, low: 800, high: 5000, rise: 0.0005, decay: 2400 };
const LEAKAGE = { level: -42, low: 150, high: 2500 };
/** The organ's level answers velocity more than the other voices' do, by this power. */
const PEDAL = 1.15;
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
    const tilt = BRIGHTNESS * Math.log2(k) * hardness(note.velocity);
    const turns = SINGLE_WHEELS.has(k) ? 0 : (k * fundamental * (2 ** (LAYER_CENTS / 1200) - 1)) / grid;
    wheels.push({
      frequency: k * fundamental,
      sharp: k * fundamental + Math.round(turns + 0.2) * grid,
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
  checkNote(note);
  const { sampleRate } = note;
  const random = createRandom(seedFrom(note.seed, note.midi));
  const loop = loopLength(LOOP_SECONDS, note.hz / 2, sampleRate);
  const wheels = wheelsOf(note, loop.fundamental, sampleRate / loop.samples, random);
  const from = Math.round(LOOP_FROM * sampleRate);
  const out = new Float64Array(from + loop.samples + LOOP_GUARD);
  addDampedSines(out, wheels.flatMap(sinesOf), sampleRate);
  const leakage = loopNoise(random, loop.samples, LEAKAGE, sampleRate);
  addLoopNoise(out, leakage, fromDecibels(LEAKAGE.level), { rise: RISE * sampleRate, from });
  const click = CLICK.level + CLICK.perHardness * hardness(note.velocity);
  addNoiseBurst({ out, sampleRate }, { ...CLICK, level: fromDecibels(click) }, random);
  const power = wheels.reduce(
    (sum, wheel) => sum + (kWeightedPower(wheel.frequency) * wheel.amplitude ** 2) / 2,
    0,
  );
  const wanted = REFERENCE_LOUDNESS_LUFS + ORGAN_LOUDNESS + LEVEL_SPREAD * (random() - 0.5);
  const gain = velocityGain(note.velocity) ** PEDAL * fromDecibels(wanted - loudnessOfPower(power));
  return {
    samples: scaled(out, gain),
    loop: { from, to: from + loop.samples },
    release: asSeconds(releaseSeconds(RELEASE, note.velocity)),
  };
};
