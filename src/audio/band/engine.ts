import type { BaseContext } from 'tone/build/esm/core/context/BaseContext.js';
import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import type { OutsideEvent } from '../../core/midi/outside-event';
import type { PartId } from '../../core/score/score';
import type { BandSound } from '../../core/song/band-sound';
import type { BankCounts, BankWorker } from '../bank/bank';
import type { MasterStage } from '../mixer/master-stage';
import type { SectionSource } from '../transport/form-position';

/** A single note to listen to; it starts `glideFrom` semitones away from its pitch. */
export interface AuditionNote {
  readonly midi: number;
  readonly seconds: number;
  readonly glideFrom: number;
}

export interface EngineOptions {
  readonly context: AudioContext;
  readonly tone: BaseContext;
  readonly master: MasterStage;
  readonly source: SectionSource;
  readonly createWorker: () => BankWorker;
  readonly onBar: (position: Playhead | null) => void;
  /** What leaves the loudspeaker in the next moment, for whoever plays along outside of the page. */
  readonly onOutside: (events: readonly OutsideEvent[]) => void;
  /** The music came to its end by itself. */
  readonly onEnd: () => void;
}

/** What the engine saw go wrong, and how much it holds. */
export interface EngineCounts extends BankCounts {
  readonly late: number;
  readonly live: number;
  readonly bytes: number;
}

/** The part of the band that exists once there is an audio context. */
export interface Engine {
  /** Resolves to false when another call took over before the music began. */
  play(program: Program, sound: BandSound, fromBar: number): Promise<boolean>;
  /** Computes what this would need first, unless the band plays. */
  prepare(program: Program, sound: BandSound, fromBar: number): void;
  stop(): void;
  /** Falls silent and keeps the bar that is heard; false when nothing is heard. */
  pause(): boolean;
  /** Goes on at the beginning of the bar it was paused in; false when another call took over before. */
  goOn(): Promise<boolean>;
  paused(): boolean;
  change(program: Program): void;
  seek(bar: number): void;
  setSound(sound: BandSound): void;
  audition(part: PartId, note: AuditionNote, sound: BandSound): Promise<void>;
  playhead(): Playhead | null;
  /** Where in the music the sound is that leaves the limiter at a time, in seconds of the audio clock. */
  playheadAt(time: number): Playhead | null;
  upcoming(): Section | null;
  playing(): boolean;
  /** Whether anything may still be heard: the music, or the end of a single note. */
  sounding(): boolean;
  /** Forgets earlier clock readings. */
  resync(): void;
  counts(): EngineCounts;
  dispose(): void;
}
