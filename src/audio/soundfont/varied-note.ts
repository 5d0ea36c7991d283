/**
 * What a set of recordings lacks that has one of each key: a harder blow sounds brighter, and no two strokes are alike.
 * Everything is made from one rendering of the key, which is kept for a while, since rendering costs ten times as much;
 * of a key that is known to be held for a moment only its beginning is rendered.
 */
import type { Biquad } from '../../core/signal/biquad';
import { seedFrom } from '../../core/theory/random';
import { bell, filtered, highShelf } from '../synthesis/biquad';
import { hardness } from '../synthesis/brightness';
import { BASE_VELOCITY, velocityGain } from '../synthesis/levels';
import { drumStroke, tonedFilters } from '../synthesis/stroke-variation';
import type { VoiceId, VoiceNote, VoiceSound } from '../synthesis/voice';
import { loudestWindow, loudnessFrom, SAME_SECONDS, WINDOW } from './font-sound';

/** Renders a voice's note; null where there is none. */
export type RenderNote = (voice: VoiceId, note: VoiceNote) => VoiceSound | null;

/**
 * Samples of renderings kept at a time: 64 MB. A song has some seventy keys and goes round them again and again, so that
 * of fewer each would be rendered anew each time.
 */
const KEPT_SAMPLES = 16e6;
/** A stroke may be a little faster than its rendering: so many seconds more than the window of its loudness are varied. */
const FASTER = 0.02;
/** What is left of a note after its release, in seconds, as times are rounded. */
const SPARE = 0.05;
/** dB above the corner for one step of hardness: what the computed voices' partials above it gain, about. */
const BRIGHTER = 3.5;
/** The corner of a tone, as a multiple of its fundamental between two ends; that of kits, in Hz. */
const BRIGHT_FROM = 3;
const CORNER = { lowest: 500, highest: 2500 };
const KIT_CORNER = 1000;
/**
 * The set's guitar alone answers velocity with its tone, and dulls more when it is struck softer: what lies above 1.4 kHz
 * was measured 4 dB lower at velocity 68 than at 80 and 15 lower at 57 and 45, besides what all of it is softer.
 */
const SOFT_GUITAR = { duller: 18, corner: 1300 };

/**
 * How much more a recorded piano sounds at its hammer's blow, and the seconds in which that fades: the strings of some
 * keys beat at first, so that they rise for 20 to 40 ms. By design; every key from C3 to C5 then rises within 13 ms.
 */
const HAMMER = { more: 1, fades: 0.01 };

/** A filter that brings some keys of a recorded instrument to their neighbours. */
interface KeysMended {
  readonly from: number;
  readonly to: number;
  readonly filter: (sampleRate: number) => Biquad;
}

/**
 * Piano keys whose recording stands apart from the keys beside it and from the stereo set it comes from: between 350 and
 * 700 Hz 55 to 58 were measured 7.5 dB too soft, and 59 to 62 were 3 dB too bright from 700 Hz up.
 */
const PIANO_MENDED: readonly KeysMended[] = [
  { from: 55, to: 58, filter: (sampleRate) => bell(450, 8, 1.4, sampleRate) },
  { from: 59, to: 62, filter: (sampleRate) => highShelf(900, -5, sampleRate) },
];

const isKit = (voice: VoiceId): boolean => voice === 'sticks' || voice === 'brushes';

/** What velocity does to the tone of a voice at a pitch in Hz. */
const brightened = (voice: VoiceId, { hz, velocity, sampleRate }: VoiceNote): Biquad => {
  const hard = hardness(velocity);
  if (voice === 'guitar' && hard < 0)
    return highShelf(SOFT_GUITAR.corner, SOFT_GUITAR.duller * hard, sampleRate);
  const corner = isKit(voice)
    ? KIT_CORNER
    : Math.min(CORNER.highest, Math.max(CORNER.lowest, hz * BRIGHT_FROM));
  return highShelf(corner, BRIGHTER * hard, sampleRate);
};

/** Where a rendering is loudest: strokes of it are made as loud there. */
type Loudest = ReturnType<typeof loudestWindow>;

/** A rendering of a key that there is one of. */
interface Heard {
  readonly sound: VoiceSound;
  readonly loudest: Loudest;
}

/** The beginning of a rendering, as far as it can be heard and its loudness is taken; all of it where it goes round. */
const asFarAsHeard = (
  { sound: { samples, loop, release }, loudest }: Heard,
  { held, sampleRate }: VoiceNote,
): Float32Array => {
  if (held === undefined || loop !== null) return samples;
  const seconds = Math.max(loudest.at + WINDOW + FASTER, held + release + SPARE);
  return samples.subarray(0, Math.ceil(seconds * sampleRate));
};

const SILENCE: Loudest = { at: 0, loudness: Number.NEGATIVE_INFINITY };

const vary = (rendering: Heard, voice: VoiceId, note: VoiceNote): VoiceSound => {
  const { sound: whole, loudest } = rendering;
  const { midi, hz, velocity, sampleRate, seed } = note;
  const heard = asFarAsHeard(rendering, note);
  const stroke = { stroke: seed, seed: seedFrom(seed, voice, midi) };
  const bright = brightened(voice, note);
  const struck = isKit(voice) ? drumStroke(heard, sampleRate, stroke) : null;
  const samples =
    struck === null
      ? filtered(heard, [...tonedFilters(hz, sampleRate, stroke), bright])
      : filtered(struck.samples, [struck.filter, bright]);
  const change = loudest.loudness - loudnessFrom(loudest.at, samples, sampleRate);
  const gain = 10 ** (change / 20) * velocityGain(velocity);
  for (let i = 0; i < samples.length; i += 1) samples[i] = (samples[i] ?? 0) * gain;
  return { ...whole, samples };
};

/** A piano's sound with its blow brought out, as even as its neighbours. */
const hammered = (sound: VoiceSound | null, { midi, sampleRate }: VoiceNote): VoiceSound | null => {
  if (sound === null) return null;
  const mended = PIANO_MENDED.filter(({ from, to }) => midi >= from && midi <= to);
  const samples = filtered(
    sound.samples,
    mended.map(({ filter }) => filter(sampleRate)),
  );
  const fade = Math.exp(-1 / (HAMMER.fades * sampleRate));
  let gain = HAMMER.more;
  for (let i = 0; i < samples.length && gain > 1e-6; i += 1) {
    samples[i] = (samples[i] ?? 0) * (1 + gain);
    gain *= fade;
  }
  return { ...sound, samples };
};

/** A rendering of a key: all of it, or its beginning alone. */
interface Base {
  readonly sound: VoiceSound | null;
  readonly loudest: Loudest;
  readonly whole: boolean;
}

/** Whether a rendering has as much of a key as is heard of a note. */
const isEnough = ({ sound, whole }: Base, { held, sampleRate }: VoiceNote): boolean => {
  if (whole || sound === null) return true;
  const heard = held === undefined ? Number.POSITIVE_INFINITY : held + sound.release + SPARE;
  return heard <= Math.min(SAME_SECONDS, sound.samples.length / sampleRate);
};

/** A renderer whose notes differ by velocity and by stroke, which the seed counts from 0, as those of an instrument, over one that knows neither. */
export const createVariedNotes = (renderPlain: RenderNote): RenderNote => {
  const render: RenderNote = (voice, note) => {
    const sound = renderPlain(voice, note);
    return voice === 'piano' ? hammered(sound, note) : sound;
  };
  const kept = new Map<string, Base>();
  let samplesKept = 0;
  const rendered = (voice: VoiceId, note: VoiceNote): Base => {
    const { held, ...rest } = note;
    // As loud as the first stroke, whichever is asked for first.
    const plain = { ...rest, velocity: BASE_VELOCITY, seed: 0 };
    const base = (sound: VoiceSound | null, whole: boolean): Base => ({
      sound,
      loudest: sound === null ? SILENCE : loudestWindow(sound.samples, note.sampleRate),
      whole,
    });
    if (!isKit(voice) && held !== undefined && held + SPARE <= SAME_SECONDS) {
      const begun = base(render(voice, { ...plain, held: SAME_SECONDS }), false);
      if (isEnough(begun, note)) return begun;
    }
    return base(render(voice, plain), true);
  };
  const baseOf = (voice: VoiceId, note: VoiceNote): Base => {
    const name = `${voice}/${note.midi}/${note.hz.toFixed(2)}/${note.sampleRate}`;
    const known = kept.get(name);
    const base = known !== undefined && isEnough(known, note) ? known : rendered(voice, note);
    samplesKept += (base.sound?.samples.length ?? 0) - (known?.sound?.samples.length ?? 0);
    kept.delete(name);
    kept.set(name, base);
    for (const [oldest, { sound }] of kept) {
      if (samplesKept <= KEPT_SAMPLES) break;
      samplesKept -= sound?.samples.length ?? 0;
      kept.delete(oldest);
    }
    return base;
  };
  return (voice, note) => {
    const { sound, loudest } = baseOf(voice, note);
    return sound && vary({ sound, loudest }, voice, note);
  };
};
