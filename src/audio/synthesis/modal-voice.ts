/**
 * Voices made of partials that die away and of bursts of noise: strings, tines. Every partial has its own level and
 * decay, because that is what can be measured on an instrument; a plucked-string loop or a pair of frequency-modulated
 * operators ties the partials together. (The best two operators still miss the electric piano's first six partials at
 * C4 by 6 dB root mean square.)
 */
import { createRandom, type Random, seedFrom } from '../../core/theory/random';
import { asSeconds } from '../../core/theory/units';
import { hardness } from './brightness';
import { checkNote } from './check-note';
import { addDampedSines, type DampedSine } from './damped-sines';
import { fadeEnd, fromDecibels, scaled } from './envelope';
import { REFERENCE_LOUDNESS_LUFS, velocityGain } from './levels';
import { kWeightedPower, loudnessOfPower } from './loudness';
import { type Tone, type ToneAnchor, toneAt } from './modal-tone';
import { addNoiseBurst, type BurstRoom } from './noise-burst';
import type { Voice, VoiceNote } from './voice';

/** A partial outside the series, sounded by the stroke alone. */
export interface StrokePartial {
  /** Frequency as a multiple of the note's. */
  readonly ratio: number;
  /** dB re the strongest partial of the series at velocity 80, and what a step of `hardness` adds. */
  readonly level: number;
  readonly perHardness: number;
  /** Seconds to lose 60 dB. */
  readonly t60: number;
}

/** Figures of an instrument that is struck or plucked and then dies away. */
export interface ModalDesign {
  readonly anchors: readonly ToneAnchor[];
  /** Cents by which the slow stage lies above the fast one: strings of a pair, planes of a string. */
  readonly beat: number;
  /** Lower edges of the noise of the stroke and of the noise under the note, Hz. */
  readonly knockLow: number;
  readonly rustleLow: number;
  /** What velocity does to partial number `k` at `frequency` besides the level common to all, dB. */
  readonly brightness: (k: number, frequency: number, velocity: number) => number;
  /** True when a duller note is also softer by what it lost; false when its level is made up. */
  readonly brightnessCounts: boolean;
  /** dB by which a stroke may move a partial. */
  readonly variation: number;
  readonly stroke: readonly StrokePartial[];
  /** Seconds to fade when the note ends. */
  readonly release: (velocity: number) => number;
}

/** A partial in two stages; amplitudes at the onset, decays in dB per second, `rise` a time constant in seconds. */
interface ModalPartial {
  readonly frequency: number;
  readonly phase: number;
  readonly early: number;
  readonly fast: number;
  readonly late: number;
  readonly slow: number;
  readonly rise: number;
  /** Factor of the amplitudes that does not count when the note's loudness is set. */
  readonly uncounted: number;
}

const LONGEST = 4;
const MOST_PARTIALS = 48;
const FADE = 0.2;
/** Seconds computed beyond a note's release, where a player fades what it has ended. */
const SPARE = 0.1;
/** The velocity that rings longest when it is let go. */
const HARDEST = 127;
/** Partials below this level at 100 ms, dB, cannot be heard under the others. */
const LEAST = -72;
/** Times between the two readings of a tone table, and up to the first. */
const GAP = 0.4;
const FIRST = 0.1;
/** dB a stroke may differ from another in level. */
const LEVEL_SPREAD = 0.6;
/** dB that a step of `hardness` adds to the noise of the stroke, above what it adds to the tone. */
const KNOCK_PER_HARDNESS = 1.5;

/** Level at 100 ms and fall to 500 ms of partial k; beyond the table the level rolls off from its last four. */
const partialFigures = (tone: Tone, k: number): { level: number; fall: number } => {
  const level = tone.levels[k - 1];
  const fall = tone.falls[k - 1];
  if (level !== undefined && fall !== undefined) return { level, fall };
  const mean = (list: readonly number[]): number => list.slice(-4).reduce((sum, value) => sum + value / 4, 0);
  const beyond = k / (tone.levels.length - 1.5);
  return {
    level: mean(tone.levels) + tone.rolloff * Math.log2(beyond),
    fall: mean(tone.falls) * Math.sqrt(beyond),
  };
};

/**
 * Splits a partial of unit amplitude at 100 ms into a fast and a slow stage that together make the measured fall.
 * A fall smaller than the slow stage's own gives a fast stage of negative amplitude: the tone holds before it sinks.
 */
const stagesOf = (fall: number, tone: Tone): { share: number; fast: number; slow: number } => {
  const slow = 60 / tone.lateT60;
  const after = fromDecibels(-fall);
  const slowAfter = fromDecibels(-GAP * slow);
  if (after >= slowAfter) {
    const fastAfter = 0.3;
    const share = (after - fastAfter) / (slowAfter - fastAfter);
    return { share, fast: (-20 * Math.log10(fastAfter)) / GAP, slow };
  }
  const share = Math.min(fromDecibels(tone.lateLevel), (0.7 * after) / slowAfter);
  const fastAfter = (after - share * slowAfter) / (1 - share);
  return { share, fast: (-20 * Math.log10(fastAfter)) / GAP, slow };
};

const partialsOf = (design: ModalDesign, note: VoiceNote, tone: Tone, random: Random): ModalPartial[] => {
  const partials: ModalPartial[] = [];
  const ripple = 0.1 + 0.3 * random();
  const turn = 2 * Math.PI * random();
  const b = tone.inharmonicity;
  for (let k = 1; k <= MOST_PARTIALS; k++) {
    const frequency = k * note.hz * Math.sqrt((1 + b * k * k) / (1 + b));
    if (frequency > 0.45 * note.sampleRate) break;
    const phase = (k % 2 === 0 ? Math.PI : 0) + 0.3 * (random() - 0.5);
    const { level, fall } = partialFigures(tone, k);
    if (level < LEAST) continue;
    const variation = design.variation * Math.min(1, (k - 1) / 4) * Math.sin(2 * Math.PI * ripple * k + turn);
    const lift = fromDecibels(design.brightness(k, frequency, note.velocity));
    const size = lift * fromDecibels(level + variation);
    const { share, fast, slow } = stagesOf(fall, tone);
    partials.push({
      frequency,
      phase,
      early: size * (1 - share) * fromDecibels(FIRST * fast),
      fast,
      late: size * share * fromDecibels(FIRST * slow),
      slow,
      rise: tone.riseHigh + (tone.rise - tone.riseHigh) / k,
      uncounted: design.brightnessCounts ? lift : 1,
    });
  }
  return partials;
};

const envelopeAt = (partial: ModalPartial, at: number): number =>
  partial.early * fromDecibels(-partial.fast * at) + partial.late * fromDecibels(-partial.slow * at);

/** Mean K-weighted power of the first 400 ms that counts for the loudness, from eight readings of the envelopes. */
const openingPower = (partials: readonly ModalPartial[]): number =>
  partials.reduce((sum, partial) => {
    let squares = 0;
    for (let i = 0; i < 8; i++) squares += envelopeAt(partial, 0.05 * (i + 0.5)) ** 2;
    return sum + (kWeightedPower(partial.frequency) * squares) / 16 / partial.uncounted ** 2;
  }, 0);

/** Seconds until the partials together are 60 dB below their start, at most `LONGEST`. */
const lengthOf = (partials: readonly ModalPartial[]): number => {
  const power = (at: number): number =>
    partials.reduce((sum, partial) => sum + envelopeAt(partial, at) ** 2, 0);
  const end = power(0) * 1e-6;
  let at = 0.2;
  while (at < LONGEST && power(at) > end) at += 0.05;
  return Math.min(at, LONGEST);
};

/** A partial as damped sines: its two stages, less an onset that dies within a few time constants. */
const sinesOf = (partial: ModalPartial, beat: number): DampedSine[] => {
  const { frequency, phase, early, fast, late, slow, rise } = partial;
  const onset = (20 * Math.LOG10E) / rise;
  return [
    { frequency, phase, amplitude: early, decay: fast },
    { frequency: frequency * 2 ** (beat / 1200), phase, amplitude: late, decay: slow },
    { frequency, phase, amplitude: -(early + late), decay: Math.max(fast, slow) + onset },
  ];
};

const strokeSine = (partial: StrokePartial, note: VoiceNote): DampedSine => ({
  frequency: partial.ratio * note.hz,
  phase: 0,
  amplitude: fromDecibels(partial.level + partial.perHardness * hardness(note.velocity)),
  decay: 60 / partial.t60,
});

/** Samples that can be heard of a note, alike for every velocity so that its layers can be added up. */
const heardOf = ({ release }: ModalDesign, { held, sampleRate }: VoiceNote): number =>
  held === undefined ? Number.POSITIVE_INFINITY : Math.ceil((held + release(HARDEST) + SPARE) * sampleRate);

const addNoises = (
  room: BurstRoom,
  note: VoiceNote,
  { knockLow, rustleLow, tone }: Pick<ModalDesign, 'knockLow' | 'rustleLow'> & { readonly tone: Tone },
  random: Random,
): void => {
  const knock = fromDecibels(tone.knockLevel + KNOCK_PER_HARDNESS * hardness(note.velocity));
  const rustle = fromDecibels(tone.rustleLevel);
  const bursts = [
    { level: knock, low: knockLow, high: tone.knockHigh, rise: 0.001, decay: 60 / tone.knockT60 },
    { level: rustle, low: rustleLow, high: tone.rustleHigh, rise: 0.02, decay: 60 / tone.rustleT60 },
  ];
  for (const burst of bursts) addNoiseBurst(room, burst, random);
};

/** A voice of damped modes: struck or plucked, and over when the last mode has died away. */
export const createModalVoice =
  (design: ModalDesign): Voice =>
  (note) => {
    checkNote(note);
    const tone = toneAt(design.anchors, note.midi);
    const random = createRandom(seedFrom(note.seed, note.midi));
    const partials = partialsOf(design, note, tone, random);
    const { sampleRate } = note;
    const whole = Math.round(lengthOf(partials) * sampleRate);
    const out = new Float64Array(Math.min(whole, heardOf(design, note)));
    const sines = partials.flatMap((partial) => sinesOf(partial, design.beat));
    addDampedSines(out, [...sines, ...design.stroke.map((partial) => strokeSine(partial, note))], sampleRate);
    addNoises({ out, sampleRate, whole }, note, { ...design, tone }, random);
    fadeEnd(out, Math.round(FADE * sampleRate), whole);
    const wanted = REFERENCE_LOUDNESS_LUFS + tone.loudness + LEVEL_SPREAD * (random() - 0.5);
    const gain = velocityGain(note.velocity) * fromDecibels(wanted - loudnessOfPower(openingPower(partials)));
    return {
      samples: scaled(out, gain),
      loop: null,
      release: asSeconds(design.release(note.velocity)),
    };
  };
