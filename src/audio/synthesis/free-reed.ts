/**
 * A free reed: the reed opens and closes the air once a period, so the sound is a train of pulses whose harmonics
 * keep one phase and nearly one strength up to the mouth's emphasis. It speaks with a breath of noise, overshoots,
 * settles within half a second, and then takes on a slight vibrato; held notes loop over whole turns of everything.
 */
import { createRandom, seedFrom } from '../../core/theory/random';
import { asSeconds } from '../../core/theory/units';
import { type Anchor, between, betweenAll, dulledAbove, spanAt } from './anchors';
import { hardness } from './brightness';
import { checkNote } from './check-note';
import { fromDecibels, scaled } from './envelope';
import { addHarmonics } from './harmonic-series';
import { REFERENCE_LOUDNESS_LUFS, velocityGain } from './levels';
import { addLoopNoise, LOOP_GUARD, type LoopLength, loopLength, loopNoise } from './loop';
import { kWeightedPower, loudnessOfPower } from './loudness';
import { addNoiseBurst } from './noise-burst';
import type { Voice, VoiceNote } from './voice';

/** Measurements of one key. Levels in dB, times in seconds. */
export interface ReedAnchor extends Anchor {
  /** Harmonics 1, 2, 3 … 100 ms after the onset, re the strongest, and what they lose from there to 500 ms. */
  readonly levels: readonly number[];
  readonly falls: readonly number[];
  /** dB per octave above the last tabulated harmonic. */
  readonly rolloff: number;
  /** Momentary loudness at velocity 80 re the reference of all voices, LU. */
  readonly loudness: number;
  /** Time constant of the onset, and how much later the upper harmonics speak: added power of it per octave. */
  readonly rise: number;
  readonly lag: number;
  /** Noise under the tone and in the attack, re the strongest harmonic. */
  readonly breathLevel: number;
  readonly chiffLevel: number;
}

/** Figures of an instrument whose reeds sound as long as they are blown. */
export interface ReedDesign {
  readonly anchors: readonly ReedAnchor[];
  /** Time constant with which the overshoot settles, s. */
  readonly settle: number;
  /** Band of the breath noise, Hz. */
  readonly breath: { readonly low: number; readonly high: number };
  readonly chiff: { readonly low: number; readonly high: number; readonly t60: number };
  readonly vibrato: {
    readonly rate: number;
    readonly cents: number;
    readonly decibels: number;
    readonly from: number;
  };
  /** dB per octave of harmonic number that a step of `hardness` adds. */
  readonly brightness: number;
  readonly variation: number;
  readonly release: (velocity: number) => number;
}

const LOOP_SECONDS = 2;
/** By then the overshoot has settled and the vibrato is whole. */
const LOOP_FROM = 1.25;
const MOST_HARMONICS = 40;
const LEVEL_SPREAD = 0.4;

interface Harmonic {
  /** Amplitude once settled, and what the overshoot adds at its start. */
  readonly settled: number;
  readonly over: number;
  /** Power of the onset curve. */
  readonly lag: number;
  readonly frequency: number;
}

const harmonicsOf = (design: ReedDesign, note: VoiceNote, random: () => number): Harmonic[] => {
  const span = spanAt(design.anchors, note.midi);
  const levels = dulledAbove(
    betweenAll(span, (anchor) => anchor.levels),
    design.anchors,
    note.midi,
  );
  const falls = betweenAll(span, (anchor) => anchor.falls);
  const rolloff = between(span, (anchor) => anchor.rolloff);
  const lag = between(span, (anchor) => anchor.lag);
  const last = levels.length;
  const tail = levels.slice(-4).reduce((sum, value) => sum + value / 4, 0);
  const count = Math.min(MOST_HARMONICS, Math.floor((0.4 * note.sampleRate) / note.hz));
  const harder = hardness(note.velocity);
  const ripple = 0.1 + 0.3 * random();
  const turn = 2 * Math.PI * random();
  const [early, late] = [Math.exp(-0.1 / design.settle), Math.exp(-0.5 / design.settle)];
  return Array.from({ length: count }, (_, i) => {
    const k = i + 1;
    const octaves = Math.log2(k);
    const stroke = design.variation * Math.min(1, i / 4) * Math.sin(2 * Math.PI * ripple * k + turn);
    const level =
      (levels[i] ?? tail + rolloff * Math.log2(k / (last - 1.5))) +
      stroke +
      design.brightness * harder * octaves;
    const at100 = fromDecibels(level);
    const at500 = fromDecibels(level - (falls[Math.min(i, falls.length - 1)] ?? 0));
    const over = (at100 - at500) / (early - late);
    return { settled: at100 - over * early, over, lag: 1 + lag * octaves, frequency: k * note.hz };
  });
};

/** 0 before the vibrato, 1 once it is whole, smooth at both ends. */
const swell = (seconds: number, from: number): number => {
  const x = Math.min(1, Math.max(0, (seconds - from) / (LOOP_FROM - from)));
  return x * x * (3 - 2 * x);
};

const addTone = (
  out: Float64Array,
  design: ReedDesign,
  harmonics: readonly Harmonic[],
  speech: {
    readonly loop: LoopLength;
    readonly from: number;
    readonly rise: number;
    readonly sampleRate: number;
  },
): void => {
  const { loop, from, rise, sampleRate } = speech;
  const turns = Math.round((design.vibrato.rate * loop.samples) / sampleRate);
  const vibratoStep = (2 * Math.PI * turns) / loop.samples;
  const rate = (turns * sampleRate) / loop.samples;
  const swing = ((2 ** (design.vibrato.cents / 1200) - 1) * loop.fundamental) / rate;
  const step = (2 * Math.PI * loop.fundamental) / sampleRate;
  const pulse = (sample: number): number =>
    swell(sample / sampleRate, design.vibrato.from) * Math.sin(vibratoStep * (sample - from));
  addHarmonics(out, {
    harmonics: harmonics.length,
    phaseAt: (sample) => step * sample + swing * pulse(sample),
    levelsAt: (sample, levels) => {
      const seconds = sample / sampleRate;
      const onset = 1 - Math.exp(-seconds / rise);
      const over = Math.exp(-seconds / design.settle) * (1 - swell(seconds, 0.5));
      const throb = pulse(sample) * design.vibrato.decibels;
      harmonics.forEach((harmonic, i) => {
        const rising = seconds > 20 * rise ? 1 : onset ** harmonic.lag;
        levels[i] = (harmonic.settled + harmonic.over * over) * rising * fromDecibels(throb);
      });
    },
  });
};

const openingPower = (harmonics: readonly Harmonic[], settle: number): number => {
  const over = Array.from({ length: 8 }, (_, i) => Math.exp((-0.05 * (i + 1)) / settle));
  return harmonics.reduce((sum, { settled, over: extra, frequency }) => {
    const squares = over.reduce((total, left) => total + (settled + extra * left) ** 2, 0);
    return sum + (kWeightedPower(frequency) * squares) / 16;
  }, 0);
};

/** A voice of free reeds: held by a loop for as long as a player blows. */
export const createFreeReedVoice =
  (design: ReedDesign): Voice =>
  (note) => {
    checkNote(note);
    const { sampleRate } = note;
    const random = createRandom(seedFrom(note.seed, note.midi));
    const span = spanAt(design.anchors, note.midi);
    const rise = between(span, (anchor) => anchor.rise);
    const loop = loopLength(LOOP_SECONDS, note.hz, sampleRate);
    const from = Math.round(LOOP_FROM * sampleRate);
    const harmonics = harmonicsOf(design, note, random);
    const out = new Float64Array(from + loop.samples + LOOP_GUARD);
    addTone(out, design, harmonics, { loop, from, rise, sampleRate });
    const breath = loopNoise(random, loop.samples, design.breath, sampleRate);
    const breathLevel = fromDecibels(between(span, (anchor) => anchor.breathLevel));
    addLoopNoise(out, breath, breathLevel, { rise: 0.5 * rise * sampleRate, from });
    const chiffLevel = fromDecibels(between(span, (anchor) => anchor.chiffLevel));
    const chiff = { level: chiffLevel, low: design.chiff.low, high: design.chiff.high };
    addNoiseBurst({ out, sampleRate }, { ...chiff, rise: 0.004, decay: 60 / design.chiff.t60 }, random);
    const wanted =
      REFERENCE_LOUDNESS_LUFS + between(span, (anchor) => anchor.loudness) + LEVEL_SPREAD * (random() - 0.5);
    const power = openingPower(harmonics, design.settle);
    const gain = velocityGain(note.velocity) * fromDecibels(wanted - loudnessOfPower(power));
    return {
      samples: scaled(out, gain),
      loop: { from, to: from + loop.samples },
      release: asSeconds(design.release(note.velocity)),
    };
  };
