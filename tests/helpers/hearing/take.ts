/** What a take of the corpus is: sound, and the truth about it. */
import type { Harp, Sound } from '../../../src/core/harp/harp';

export interface Vibrato {
  /** Pulses a second. */
  readonly rate: number;
  /** Greatest deviation from the mean pitch. */
  readonly cents: number;
}

/** A note that was played, or several at once on one breath. Seconds of the take. */
export interface TrueNote {
  /** The breath begins, or the glide from the note before has come half-way. */
  readonly from: number;
  /** The breath ends, or the glide to the next note has come half-way. */
  readonly to: number;
  /** One for a single note, more for a chord or split; lowest hole first. */
  readonly sounds: readonly Sound[];
  /** The pitch it settles on, of the first sound. Hz. */
  readonly hz: number;
  /** Cents from where it begins to where it settles; negative for a scoop from below. */
  readonly scoop: number;
  readonly vibrato: Vibrato | null;
  /** True for an overbend that does not come: it squeals, chokes or wavers, and is no note of the harp. */
  readonly failed: boolean;
}

/** Pitch over time: entry i belongs to second `i * step`. */
export interface PitchTrack {
  readonly step: number;
  /** Fundamental of what sounds, of the lowest hole where several do; 0 where nothing does. */
  readonly hz: Float64Array;
  /**
   * 1 where the truth is plain: one reed at more than −12 dB of its note's level, or silence. 0 in the first
   * instants of an attack, in releases and what the room makes of them, and under several notes at once.
   */
  readonly judged: Uint8Array;
}

export interface Take {
  readonly name: string;
  readonly sampleRate: number;
  /** What the microphone gives, mono. */
  readonly samples: Float32Array;
  /** The band as it was sent out, mono; null when it does not play. */
  readonly band: Float32Array | null;
  /** As the player knows it: its intonation is in the cents of its reeds, what single reeds are off besides is not. */
  readonly harp: Harp;
  /** A4 of the harp. Hz. */
  readonly reference: number;
  readonly notes: readonly TrueNote[];
  readonly track: PitchTrack;
}
