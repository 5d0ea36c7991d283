import type { KnownReeds } from '../core/grips/known-reeds';
import type { Sound } from '../core/harp/harp';
import type { HarpInHand } from '../core/hearing/choose-sounds';
import type { HeardNote } from '../core/hearing/heard-note';
import type { PitchFrame } from '../core/hearing/pitch-frame';
import type { RoundTrip } from '../core/hearing/round-trip';
import type { Seconds } from '../core/theory/units';

/** What browsers do to a microphone's sound unless asked not to; held reed tones suffer from all of it. */
const PROCESSING = ['echo cancellation', 'noise suppression', 'automatic gain'] as const;
export type Processing = (typeof PROCESSING)[number];

/** A microphone as the browser lists it; without a name before it was ever allowed. */
export interface MicDevice {
  readonly id: string;
  readonly name: string;
}

/** The microphone that is open. */
export interface MicInput extends MicDevice {
  /** What the browser does to the sound although it was asked not to. */
  readonly processing: readonly Processing[];
  /** Seconds from the air to the page, as far as the browser says; null where it does not. */
  readonly latency: Seconds | null;
}

/** Why there is nothing to hear. */
export type MicTrouble =
  /** The player or the system said no. */
  | 'denied'
  /** No microphone is there at all. */
  | 'missing'
  /** It was there, or chosen, and is gone. */
  | 'unplugged'
  /** Another program holds it, or the system does not hand it out. */
  | 'busy'
  /** The browser gives no microphone to pages, or not to this one (it is not served securely). */
  | 'unsupported'
  | 'failed';

/** Whether the page listens, and what keeps it from that. */
export type MicStatus =
  | { readonly kind: 'off' }
  /** The browser asks the player. */
  | { readonly kind: 'asking' }
  | { readonly kind: 'listening'; readonly input: MicInput }
  /** Open, and nothing comes: switched off outside the page, or the page's sound is held up. It goes on by itself. */
  | { readonly kind: 'silent'; readonly why: 'muted' | 'suspended'; readonly input: MicInput }
  | { readonly kind: 'trouble'; readonly why: MicTrouble; readonly detail: string };

/** How loud it was since the last report, in dB re full scale. */
export interface HeardLevel {
  readonly peak: number;
  readonly mean: number;
  /** What the band sent meanwhile. */
  readonly sent: number;
}

/** What was heard since the last report; every time is in seconds of the audio clock. */
export interface HeardReport {
  readonly frames: readonly PitchFrame[];
  /** Each note when it has surely begun (`to` null), and again, with the same `id`, when it has ended. */
  readonly notes: readonly HeardNote[];
  /** Since when a new ear listens, whose notes are numbered anew; null when it is the one of the last report. */
  readonly begun: Seconds | null;
  readonly level: HeardLevel | null;
  /** How long the band takes to come back into the microphone, by itself; null while that is not known. */
  readonly way: Seconds | null;
}

/** What was heard, and what was sent meanwhile, mono in 16 bits: about a second of it. */
export interface SoundBlock {
  /** Samples a second. */
  readonly sampleRate: number;
  /** Seconds of the audio clock at the first sample. */
  readonly at: Seconds;
  readonly heard: Int16Array;
  readonly sent: Int16Array;
}

/** What is known of how a harp's reeds sound, and the name it is kept under; null where nothing is. */
export interface LearntReeds {
  readonly key: string;
  readonly known: KnownReeds | null;
}

/** What is listened for. */
export interface EarChoice extends HarpInHand {
  /** Level below which nothing counts, as calibrated; dB re full scale. */
  readonly gate?: number;
  /** What the ear begins with when the key is another than before; nothing is told of what it learns when absent. */
  readonly reeds?: LearntReeds;
}

/** The page's sound: its context, and the node that all of it leaves through. */
export interface MicGround {
  readonly context: AudioContext;
  readonly output: AudioNode;
}

/** A microphone with an ear behind it. Nothing of what it hears leaves the machine, or is kept unless asked for. */
export interface Microphone {
  status(): MicStatus;
  /**
   * Asks for a microphone (null: the one the system prefers) and listens. One that is gone is replaced by no other.
   * Resolves with the status that came of it.
   */
  open(device: string | null, ground: MicGround, choice: EarChoice): Promise<MicStatus>;
  /** Lets the microphone go; idempotent. */
  close(): void;
  /** Listens for another harp, or more narrowly, from now on. */
  listenFor(choice: EarChoice): void;
  /** The ear learns how a natural sound of the harp sounds, from a note of it alone that has just ended. */
  teach(sound: Sound, from: Seconds, to: Seconds): void;
  /**
   * Sends chirps out and finds them in what comes back; takes some 3 s. Null where they are not heard, as with
   * headphones, and where nothing is listened to.
   */
  measureWay(): Promise<RoundTrip | null>;
  /** Sends clicks out after so many seconds each; returns when they leave, in seconds of the audio clock. */
  click(delays: readonly number[]): readonly Seconds[];
  /** The audio clock now, in seconds; null while nothing is open. */
  now(): Seconds | null;
  /** Hands the sound itself on as well, or no longer; at first it does not. */
  record(on: boolean): void;
  /** The microphones there are; empty where the browser does not say. Never rejects. */
  devices(): Promise<readonly MicDevice[]>;
  onStatus(listener: (status: MicStatus) => void): () => void;
  /** A microphone came or went. */
  onDevices(listener: () => void): () => void;
  onHeard(listener: (report: HeardReport) => void): () => void;
  /** What was learnt of the harp's reeds, every ten seconds while something is, and at once where it was taught. */
  onLearnt(listener: (learnt: LearntReeds) => void): () => void;
  /** The sound while it is recorded, without a gap while the microphone is open. */
  onSound(listener: (block: SoundBlock) => void): () => void;
  dispose(): void;
}
