import type { BassVoice, ChordVoice, Kit } from '../../core/score/voices';
import type { Hz, Midi, Seconds } from '../../core/theory/units';

/** Every instrument there is: those the band chooses from, the harp and the click. */
export type VoiceId = BassVoice | ChordVoice | Kit | 'harmonica' | 'click';

/** One note to compute. */
export interface VoiceNote {
  /** Sounding key, or General MIDI percussion key for kits and click; chooses the tone, while `hz` sets the pitch. */
  readonly midi: Midi;
  /** Sounding frequency, temperament and reference pitch included; kits ignore it. */
  readonly hz: Hz;
  /** 1–127; changes brightness as well as level. */
  readonly velocity: number;
  readonly sampleRate: number;
  /** Different seeds are different strokes of the same note (round robin). */
  readonly seed: number;
  /** Seconds the note is held at most: a voice may leave out what only sounds after that and its release. */
  readonly held?: number;
}

/** A computed note, mono. Levels of all voices are in one scale, so that equal velocities balance as the targets say. */
export interface VoiceSound {
  readonly samples: Float32Array;
  /** Sample indices to loop for held notes; `null` for sounds that decay by themselves. */
  readonly loop: { readonly from: number; readonly to: number } | null;
  /** Time the sound takes to fade after the note ends. */
  readonly release: Seconds;
}

/** Computes one note. Pure: the same note gives the same samples. */
export type Voice = (note: VoiceNote) => VoiceSound;
