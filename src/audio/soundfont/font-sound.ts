/** A note rendered from a SoundFont becomes a sound of the bank: trimmed, looped or let die, and as loud as its voice. */
import { asSeconds } from '../../core/theory/units';
import { hitLoudness } from '../drums/drum-level';
import type { VoiceNote, VoiceSound } from '../synthesis/voice';
import { LOOPABLE_SECONDS, loopHeld } from './held-loop';

/** What a synthesizer made of one note, mono, at any level. */
export interface FontNote {
  /** The note held to its end or for a few seconds. */
  readonly held: Float32Array;
  /** The note let go at a frame, about `RELEASED_AT` seconds after its start; null for struck sounds. */
  readonly released: { readonly samples: Float32Array; readonly at: number } | null;
  /** Whether `held` is only the beginning of a note that goes on. */
  readonly begun: boolean;
}

/** When the second rendering of a note lets it go, in seconds. */
export const RELEASED_AT = 0.5;
/** How long a note is held at most, in seconds. */
export const HELD_SECONDS = 6;
/** How much of a note is rendered that is known to be short; and how much of that is what all of it would be. */
export const BEGINNING_SECONDS = 2;
export const SAME_SECONDS = 1.9;

/** A peak below this is silence: −80 dB of full scale. */
const SILENT = 1e-4;
/** A sound begins where it first comes within 50 dB of its peak; recordings often have a little air before it. */
const ONSET = 10 ** (-50 / 20);
const LEAD_IN = 0.001;
/** A sound is over 60 dB below its peak. */
const OVER = 1e-3;
/**
 * What falls faster than this between its second and its fourth second dies away; the rest is held. In dB; voices that
 * hold their notes beat, which looks like dying.
 */
const DYING = { usual: 3, held: 9 };
const FADE = { end: 0.03, cut: 1 };
const RELEASE = { shortest: 0.03, longest: 1.5 };
/** Loudness is taken where the sound is loudest, in windows of so many seconds one after another. */
export const WINDOW = 0.4;
const WINDOWS = [0, WINDOW, 2 * WINDOW];
/** Seconds within which it is. */
export const LOUDEST_WITHIN = 1.2;

const peakOf = (samples: Float32Array): number => {
  let peak = 0;
  for (let i = 0; i < samples.length; i += 1) {
    const level = Math.abs(samples[i] ?? 0);
    // No number is greater than what is none.
    if (!(level <= peak)) peak = level;
    if (!(peak < Number.POSITIVE_INFINITY)) throw new RangeError('the sound is not made of numbers');
  }
  return peak;
};

const powerOf = (samples: Float32Array, from: number, to: number): number => {
  let sum = 0;
  for (let i = from; i < to; i += 1) sum += (samples[i] ?? 0) ** 2;
  return sum;
};

const decibels = (ratio: number): number => 10 * Math.log10(ratio);

/** Whether a sound that is still there after four seconds keeps its level. */
const isHeldLevel = (samples: Float32Array, sampleRate: number, dying: number): boolean => {
  if (samples.length < Math.max(4, LOOPABLE_SECONDS) * sampleRate) return false;
  const second = (at: number) => powerOf(samples, at * sampleRate, (at + 1) * sampleRate);
  return decibels(second(1) / second(3)) < dying;
};

/** The momentary loudness of a sound from so many seconds on, in LUFS. */
export const loudnessFrom = (at: number, samples: Float32Array, sampleRate: number): number =>
  hitLoudness(
    samples.subarray(Math.round(at * sampleRate), Math.ceil(LOUDEST_WITHIN * sampleRate)),
    sampleRate,
  );

/** Where a sound is loudest, in seconds from its beginning, and its momentary loudness there, in LUFS. */
export const loudestWindow = (
  samples: Float32Array,
  sampleRate: number,
): { readonly at: number; readonly loudness: number } => {
  let loudest = { at: 0, loudness: Number.NEGATIVE_INFINITY };
  for (const at of WINDOWS) {
    const loudness = loudnessFrom(at, samples, sampleRate);
    if (loudness > loudest.loudness) loudest = { at, loudness };
  }
  return loudest;
};

/** The momentary loudness of a sound where it is loudest, in LUFS. */
export const loudestOf = (samples: Float32Array, sampleRate: number): number =>
  loudestWindow(samples, sampleRate).loudness;

/** Ends a sound where nothing is left of it, or fades it out where it was cut. */
const letDie = (samples: Float32Array, peak: number, sampleRate: number): Float32Array => {
  let end = samples.length;
  while (end > 1 && Math.abs(samples[end - 1] ?? 0) < peak * OVER) end -= 1;
  const out = samples.slice(0, end);
  const wasCut = samples.length >= HELD_SECONDS * sampleRate * 0.99 && end === samples.length;
  const fade = Math.min(out.length, Math.round((wasCut ? FADE.cut : FADE.end) * sampleRate));
  for (let i = 0; i < fade; i += 1) out[out.length - 1 - i] = (out[out.length - 1 - i] ?? 0) * (i / fade);
  return out;
};

/** A copy of samples times a gain. */
const scaledBy = (samples: Float32Array, gain: number): Float32Array => {
  const out = new Float32Array(samples.length);
  for (let i = 0; i < out.length; i += 1) out[i] = gain * (samples[i] ?? 0);
  return out;
};

/** The straight fade that carries as much as what sounds on after the note was let go. */
const releaseOf = ({ samples, at }: NonNullable<FontNote['released']>, sampleRate: number): number => {
  const before = Math.round(0.05 * sampleRate);
  const level = powerOf(samples, at - before, at) / before;
  if (level === 0) return RELEASE.shortest;
  const seconds = (3 * powerOf(samples, at, samples.length)) / level / sampleRate;
  return Math.min(RELEASE.longest, Math.max(RELEASE.shortest, seconds));
};

/** A sound looped or let die; only begun, it is what all of it would be, as loops lie farther on. */
const shapedAs = (
  { held, released, begun }: FontNote,
  from: number,
  { hz, sampleRate, holds }: FontAim,
): Pick<VoiceSound, 'samples' | 'loop'> => {
  const samples = held.subarray(from);
  if (begun) return { samples, loop: null };
  return released !== null && isHeldLevel(samples, sampleRate, holds ? DYING.held : DYING.usual)
    ? loopHeld({ samples, sampleRate, hz })
    : { samples: letDie(samples, peakOf(samples), sampleRate), loop: null };
};

/** What the computed voice's sound of the same note is to it. */
export interface VoiceModel {
  /** In LUFS, where it is loudest. */
  readonly loudness: number;
  /** Whether it goes on for as long as it is held. */
  readonly holds: boolean;
}

/** What a rendered note is to become. */
export type FontAim = Pick<VoiceNote, 'hz' | 'sampleRate'> & VoiceModel;

/**
 * The bank's sound of a rendered note, as loud as its model, the computed voice's sound of the same note, so that the mix
 * holds whatever level a file has. Null when the note is silent. Throws RangeError when it is not made of numbers.
 */
export const fontSound = (note: FontNote, aim: FontAim): VoiceSound | null => {
  const { held, released } = note;
  const { sampleRate } = aim;
  if (peakOf(held) < SILENT) return null;
  // Of its beginning, since no more of it may be there.
  const peak = peakOf(held.subarray(0, sampleRate));
  let onset = 0;
  while (onset < held.length && Math.abs(held[onset] ?? 0) <= peak * ONSET) onset += 1;
  const shaped = shapedAs(note, Math.max(0, onset - Math.round(LEAD_IN * sampleRate)), aim);
  const gain = 10 ** ((aim.loudness - loudestOf(shaped.samples, sampleRate)) / 20);
  const seconds = released === null ? shaped.samples.length / sampleRate : releaseOf(released, sampleRate);
  return {
    samples: scaledBy(shaped.samples, gain),
    loop: shaped.loop,
    release: asSeconds(seconds),
  };
};

/** Whether the beginning of a note that goes on is still loud enough not to have been over before. */
export const goesOn = (samples: Float32Array, sampleRate: number): boolean =>
  samples.length >= BEGINNING_SECONDS * sampleRate &&
  peakOf(samples.subarray(Math.floor(SAME_SECONDS * sampleRate))) > 2 * OVER * peakOf(samples);
