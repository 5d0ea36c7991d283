/** The ear's side of the worker: blocks of sound come in, reports go out. */
import type { Sound } from '../core/harp/harp';
import { createEar, type Ear } from '../core/hearing/ear';
import type { HeardNote } from '../core/hearing/heard-note';
import type { PitchFrame } from '../core/hearing/pitch-frame';
import { findRoundTrip, type RoundTrip } from '../core/hearing/round-trip';
import { asSeconds, type Seconds } from '../core/theory/units';
import type { EarBlock } from './ear-messages';
import { createLevelMeter } from './level-meter';
import type { EarChoice, HeardReport, LearntReeds } from './microphone';
import { createReedMemory } from './reed-memory';

/** Listens to blocks of sound, in the worker. */
export interface EarServer {
  /** Listens anew, for this, from the next block on. */
  choose(choice: EarChoice): void;
  take(block: EarBlock): void;
  /** Finds what is sent in the next seconds in what is heard, and tells. */
  measure(seconds: number, tell: (roundTrip: RoundTrip | null) => void): void;
  /** Learns the reed of a natural sound that was heard alone just now: its beginning and end, s of the audio clock. */
  teach(sound: Sound, from: number, to: number): void;
}

/** Frames are reported together after so many seconds, and levels after so many: the eye wants no more. */
const REPORT = { frames: 0.03, level: 0.1 } as const;

const seconds = (value: number | null): Seconds | null => (value === null ? null : asSeconds(value));

const shiftedFrame = (frame: PitchFrame, by: number): PitchFrame => ({
  ...frame,
  known: asSeconds(frame.known + by),
  centre: asSeconds(frame.centre + by),
});

const shiftedNote = (note: HeardNote, by: number): HeardNote => ({
  ...note,
  from: asSeconds(note.from + by),
  to: note.to === null ? null : asSeconds(note.to + by),
});

/** Records both sides until there is enough, and hands them to a measurement. */
const createRecorder = (sampleRate: number) => {
  let sides: { readonly heard: Float32Array; readonly sent: Float32Array } | null = null;
  let filled = 0;
  let done: (roundTrip: RoundTrip | null) => void = () => {};
  return {
    begin: (seconds: number, tell: typeof done): void => {
      const length = Math.round(seconds * sampleRate);
      sides = { heard: new Float32Array(length), sent: new Float32Array(length) };
      filled = 0;
      done = tell;
    },
    take: ({ heard, sent }: EarBlock): void => {
      if (sides === null) return;
      const left = sides.heard.length - filled;
      sides.heard.set(heard.subarray(0, left), filled);
      sides.sent.set(sent.subarray(0, left), filled);
      filled += heard.length;
      if (filled < sides.heard.length) return;
      const full = sides;
      sides = null;
      done(findRoundTrip(full.sent, full.heard, sampleRate));
    },
  };
};

/**
 * Serves one stream of blocks, of so many samples a second. Notes are reported at once, all else a little later; what is
 * learnt of the harp's reeds goes to `keep`.
 */
export const createEarServer = (
  sampleRate: number,
  tell: (report: HeardReport) => void,
  keep: (learnt: LearntReeds) => void = () => {},
): EarServer => {
  const reeds = createReedMemory(keep);
  const meter = createLevelMeter();
  const recorder = createRecorder(sampleRate);
  let choice: EarChoice | null = null;
  let ear: Ear | null = null;
  /** Seconds of the audio clock at which the ear began. */
  let origin = 0;
  let begun: number | null = null;
  let frames: PitchFrame[] = [];
  let since = 0;
  let levelSince = 0;

  const begin = (at: number): Ear | null => {
    if (choice === null) return null;
    origin = at;
    begun = at;
    return createEar({ ...choice, sampleRate, band: true, profiles: reeds.begin(choice) });
  };
  const report = (notes: readonly HeardNote[], now: number): void => {
    const level = now - levelSince >= REPORT.level ? meter.read() : null;
    if (level !== null) levelSince = now;
    since = now;
    const way = ear?.delay() ?? null;
    tell({ frames, notes, begun: seconds(begun), level, way: seconds(way) });
    frames = [];
    begun = null;
  };

  return {
    choose: (next) => {
      const left = ear?.end().map((note) => shiftedNote(note, origin)) ?? [];
      choice = next;
      ear = null;
      if (left.length > 0) report(left, since);
    },
    measure: recorder.begin,
    teach: (sound, from, to) => {
      ear?.teach(sound, from - origin, to - origin);
      reeds.tellNow();
    },
    take: (block) => {
      const { at, heard, sent } = block;
      recorder.take(block);
      const now = (at + heard.length) / sampleRate;
      ear ??= begin(at / sampleRate);
      meter.push(heard, sent);
      const made = ear?.push(heard, sent);
      frames.push(...(made?.frames ?? []).map((frame) => shiftedFrame(frame, origin)));
      const notes = (made?.notes ?? []).map((note) => shiftedNote(note, origin));
      if (notes.length > 0 || now - since >= REPORT.frames) report(notes, now);
      reeds.look(now);
    },
  };
};
