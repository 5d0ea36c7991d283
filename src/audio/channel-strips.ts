import type { PartId } from '../core/score/score';

/** A gentle bell or shelf. */
export interface Equaliser {
  readonly type: 'peaking' | 'lowshelf' | 'highshelf' | 'highpass';
  readonly frequency: number;
  /** In dB; no meaning for `highpass`. */
  readonly gain: number;
  readonly q: number;
}

/** How a part sits in the mix before the player touches its fader: our own choice by ear and by meter. */
export interface ChannelStrip {
  /** In dB. */
  readonly level: number;
  /** To the room, in dB; null keeps the part dry. */
  readonly send: number | null;
  readonly equaliser: Equaliser | null;
}

/**
 * The chords give way between 200 Hz and 3 kHz, where the harp's fundamentals and its brightness lie; bass and
 * drums stand mostly below and above it. The click stays dry, so that its beat is sharp.
 */
export const CHANNEL_STRIPS: Readonly<Record<PartId, ChannelStrip>> = {
  drums: { level: 0, send: -17, equaliser: null },
  bass: { level: 0, send: -30, equaliser: { type: 'peaking', frequency: 350, gain: -2, q: 0.8 } },
  chords: { level: 0, send: -15, equaliser: { type: 'peaking', frequency: 900, gain: -3, q: 0.5 } },
  lead: { level: 0, send: -14, equaliser: null },
  click: { level: 0, send: null, equaliser: null },
};

/** Where a piece of the kit stands, −1 left … 1 right, as the audience sees it, by General MIDI percussion key. */
export const kitPosition = (key: number): -1 | 0 | 1 => {
  if ([42, 44, 46, 49, 55].includes(key)) return 1;
  if ([41, 43, 45, 51, 53, 57, 59].includes(key)) return -1;
  return 0;
};

/** How far from the middle the outer pieces of the kit stand. */
export const KIT_WIDTH = 0.35;
