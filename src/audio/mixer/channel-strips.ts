import { DRUM_KEYS } from '../../core/score/drum-kit';
import type { PartId } from '../../core/score/score';
import type { VoiceId } from '../synthesis/voice';

/** A gentle bell. */
export interface Equaliser {
  readonly frequency: number;
  /** In dB. */
  readonly gain: number;
  readonly q: number;
}

/** Where the rounding off of peaks begins, and the amplitude it never passes. */
export interface Rounding {
  readonly from: number;
  readonly to: number;
}

/** How a part sits in the mix before the player touches its fader: our own choice by meter and by ear. */
export interface ChannelStrip {
  /** In dB. */
  readonly level: number;
  /** To the room, in dB; null keeps the part dry. */
  readonly send: number | null;
  readonly equaliser: Equaliser | null;
  /** Peaks are rounded off from one amplitude on and never pass another; null leaves them. */
  readonly rounding: Rounding | null;
}

/**
 * The chords give way around 500 Hz, where they stood out over a bass that was too soft; from 1 to 4 kHz, where the harp's
 * brightness lies, the band has no more than the same notes have elsewhere (`tests/reference/mix-figures.ts`). The click
 * stays dry, so that its beat is sharp. A backbeat peaks 20 dB above the drums' loudness: rounding it off keeps the limiter
 * from ducking the whole band on two and four.
 */
export const CHANNEL_STRIPS: Readonly<Record<PartId, ChannelStrip>> = {
  drums: { level: 3, send: -13, equaliser: null, rounding: { from: 0.25, to: 0.65 } },
  bass: {
    level: 1,
    send: -30,
    equaliser: { frequency: 350, gain: -2, q: 0.8 },
    rounding: null,
  },
  chords: {
    level: 0,
    send: -12.8,
    equaliser: { frequency: 500, gain: -3, q: 0.7 },
    rounding: null,
  },
  second: {
    level: -2,
    send: -12.8,
    equaliser: { frequency: 500, gain: -3, q: 0.7 },
    rounding: null,
  },
  lead: { level: 0, send: -14, equaliser: null, rounding: null },
  click: { level: 0, send: null, equaliser: null, rounding: null },
};

/**
 * What brings the voices of a part to one loudness in the band, in dB. The voices themselves keep the balance of the
 * General MIDI set they are measured by, where a held organ lies far below a ringing electric piano.
 */
const VOICE_LEVELS: Readonly<Partial<Record<VoiceId, number>>> = {
  organ: 5.5,
  'electric-piano': -0.3,
  // Its partials lie higher than an upright's, where they are heard more and make the band narrow.
  'fingered-bass': -1,
  // Three of them for the middle that it does not stand in, where a sound goes to both sides whole.
  guitar: 4,
};

/** Gain of a voice within its part. */
export const voiceGain = (voice: VoiceId): number => 10 ** ((VOICE_LEVELS[voice] ?? 0) / 20);

/** An amplitude: unchanged below `from`, above it bent towards `to`, which it never reaches (tanh). */
export const roundedOff = (amplitude: number, { from, to }: Rounding): number => {
  const over = Math.abs(amplitude) - from;
  return over <= 0 ? amplitude : Math.sign(amplitude) * (from + (to - from) * Math.tanh(over / (to - from)));
};

/** The keys in the middle of a comping hand: F3 to B3. */
const KEYBOARD_MIDDLE = { from: 53, to: 59 };

/** A rim that is knocked stands in for claves, beside the snare: in the middle it makes a rhumba narrow. */
const RIM = 0.5;

/** Where a piece of the kit stands, −1 left … 1 right, as the audience sees it, by General MIDI percussion key. */
const kitPosition = (key: number): number => {
  if (key === DRUM_KEYS.stick) return RIM;
  if ([42, 44, 46, 48, 49, 50, 55].includes(key)) return 1;
  if ([41, 43, 45, 51, 53, 57, 59].includes(key)) return -1;
  return 0;
};

/** How far from the middle the outer pieces of the kit stand. */
const KIT_WIDTH = 0.9;

/** Where a keyboard's note stands, −1 left … 1 right, as the player hears it. */
const chordPosition = (midi: number): -1 | 0 | 1 => {
  if (midi < KEYBOARD_MIDDLE.from) return -1;
  return midi > KEYBOARD_MIDDLE.to ? 1 : 0;
};

/** How far from the middle a keyboard's low and high notes stand. */
const CHORD_WIDTH = 0.9;

/** Voices whose low notes stand to the left of their high ones. */
const KEYBOARDS: ReadonlySet<VoiceId> = new Set(['piano', 'electric-piano']);

/** How far from the middle a guitar stands, across from the hats; a second one stands on the other side. */
const GUITAR_SIDE = 0.2;

/** Where a note of a part stands before the part's own pan, −1 left … 1 right; an organ's goes round. */
export const placeOf = (part: PartId, voice: VoiceId, pitch: number): number | 'turning' => {
  if (part === 'drums') return kitPosition(pitch) * KIT_WIDTH;
  if (voice === 'organ') return 'turning';
  if (voice === 'guitar') return part === 'second' ? GUITAR_SIDE : -GUITAR_SIDE;
  return KEYBOARDS.has(voice) ? chordPosition(pitch) * CHORD_WIDTH : 0;
};
