/** A note in samples: its sound as fast as it is played and as loud as its envelope has it. */
import { CUT, CUT_OVER, type Envelope, endOf, gainAt, type Struck } from '../band/note-envelope';
import type { Stretch } from '../bank/bank-messages';
import type { VoiceId } from '../synthesis/voice';

/** A sound as it is mixed. */
export interface MixSound {
  readonly samples: Float32Array;
  /** The held part, in samples; null for sounds that decay by themselves. */
  readonly loop: Stretch | null;
}

/** A note as it is mixed, its times in seconds of the file. */
export interface MixNote extends Struck {
  readonly voice: VoiceId;
  /** The number of its sound. */
  readonly sound: number;
  readonly rate: number;
  readonly glide: { readonly ratio: number; readonly seconds: number };
}

/** A note that has begun. */
export interface Ringing {
  readonly note: MixNote;
  readonly sound: MixSound;
  /** Its first frame, and the first after it. */
  readonly start: number;
  end: number;
  /** When another note cut it, in seconds. */
  cut: number | null;
  /** Where in its sound it is, in samples. */
  position: number;
}

/** Begins a note. */
export const beginNote = (note: MixNote, sound: MixSound, sampleRate: number): Ringing => {
  const start = Math.round(note.envelope.at * sampleRate);
  const held = Math.ceil(endOf(note.envelope) * sampleRate);
  return { note, sound, start, end: Math.min(held, soundEnd(note, sound, start)), cut: null, position: 0 };
};

/** The frame at which a sound that is played as it is ends with its samples; another one is asked as it goes. */
const soundEnd = ({ rate, glide }: MixNote, { samples, loop }: MixSound, start: number): number =>
  rate === 1 && glide.seconds === 0 && loop === null ? start + samples.length : Number.POSITIVE_INFINITY;

/** Cuts a note at a time. */
export const cutNote = (ringing: Ringing, at: number, sampleRate: number): void => {
  if (ringing.cut !== null) return;
  ringing.cut = at;
  // A note that was cut while it was let go dies away by the cut alone, be it later than it would have been over.
  const over = Math.ceil((at + CUT_OVER) * sampleRate);
  ringing.end = Math.min(over, soundEnd(ringing.note, ringing.sound, ringing.start));
};

/** How fast a note plays its sound at a frame. */
const rateAt = ({ note: { rate, glide }, start }: Ringing, frame: number, sampleRate: number): number => {
  const gone = (frame - start) / sampleRate;
  return gone >= glide.seconds ? rate : rate * glide.ratio ** (1 - gone / glide.seconds);
};

/** The next samples of a note's sound, in the array at hand or as they lie. */
const nextSamples = (
  ringing: Ringing,
  from: number,
  scratch: Float32Array,
  sampleRate: number,
): Float32Array => {
  const { samples, loop } = ringing.sound;
  const { rate, glide } = ringing.note;
  const even = rate === 1 && glide.seconds === 0;
  const until = loop === null ? samples.length : loop.to;
  let { position } = ringing;
  if (even && position + scratch.length <= until) {
    ringing.position = position + scratch.length;
    return samples.subarray(position, ringing.position);
  }
  for (let i = 0; i < scratch.length; i += 1) {
    const index = Math.floor(position);
    const next = loop !== null && index + 1 >= loop.to ? loop.from : index + 1;
    const one = samples[index] ?? 0;
    scratch[i] = even ? one : one + (position - index) * ((samples[next] ?? 0) - one);
    position += even ? 1 : rateAt(ringing, from + i, sampleRate);
    if (loop !== null && position >= loop.to) position -= loop.to - loop.from;
  }
  ringing.position = position;
  return scratch;
};

/** Samples from one to another, and where they are added. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly at: number;
}

/** Adds samples with one gain. */
const addEven = (out: Float32Array, samples: Float32Array, { from, to, at }: Span, gain: number): void => {
  const ahead = at - from;
  for (let i = from; i < to; i += 1) out[ahead + i] = (out[ahead + i] ?? 0) + gain * (samples[i] ?? 0);
};

/** Adds samples with a gain that changes by a step and by a factor from each to the next. */
const addFalling = (
  out: Float32Array,
  samples: Float32Array,
  { from, to, at }: Span,
  { gain, step = 0, factor = 1 }: { gain: number; step?: number; factor?: number },
): void => {
  const ahead = at - from;
  let now = gain;
  for (let i = from; i < to; i += 1) {
    out[ahead + i] = (out[ahead + i] ?? 0) + now * (samples[i] ?? 0);
    now = now * factor + step;
  }
};

/** Where the level of an envelope ends to be even, and where it begins to be cut: frames. */
const turnsOf = ({ until }: Envelope, cut: number | null, sampleRate: number): readonly [number, number] => {
  const even = Math.floor(until * sampleRate) + 1;
  return [even, cut === null ? Number.POSITIVE_INFINITY : Math.ceil(cut * sampleRate)];
};

/** Adds what a note sounds from a frame on, as far as the samples reach. @param scratch at least as long as they */
export const addNote = (
  out: Float32Array,
  ringing: Ringing,
  from: number,
  { scratch, sampleRate }: { readonly scratch: Float32Array; readonly sampleRate: number },
): void => {
  const first = Math.max(from, ringing.start);
  const last = Math.min(from + out.length, ringing.end);
  if (last <= first) return;
  const { envelope } = ringing.note;
  const { level, release } = envelope;
  const samples = nextSamples(ringing, first, scratch.subarray(0, last - first), sampleRate);
  const [even, cut] = turnsOf(envelope, ringing.cut, sampleRate);
  const span = (start: number, end: number): Span => ({
    from: start - first,
    to: end - first,
    at: start - from,
  });
  const evenEnd = Math.max(first, Math.min(last, even, cut));
  const fallEnd = Math.max(evenEnd, Math.min(last, cut));
  addEven(out, samples, span(first, evenEnd), level);
  if (fallEnd > evenEnd)
    addFalling(out, samples, span(evenEnd, fallEnd), {
      gain: gainAt(envelope, evenEnd / sampleRate),
      step: -level / (release * sampleRate),
    });
  if (ringing.cut === null) return;
  const decay = Math.exp(-(fallEnd / sampleRate - ringing.cut) / CUT);
  addFalling(out, samples, span(fallEnd, last), {
    gain: gainAt(envelope, ringing.cut) * decay,
    factor: Math.exp(-1 / (CUT * sampleRate)),
  });
};
