/** The ear's side of the worker: blocks of sound come in, reports go out. */
import { createEar, type Ear } from '../core/hearing/ear';
import type { HeardNote } from '../core/hearing/heard-note';
import type { PitchFrame } from '../core/hearing/pitch-frame';
import { asSeconds } from '../core/theory/units';
import type { EarBlock } from './ear-messages';
import { createLevelMeter } from './level-meter';
import type { EarChoice, HeardReport } from './microphone';

export interface EarServer {
  /** Listens anew, for this, from the next block on. */
  choose(choice: EarChoice): void;
  take(block: EarBlock): void;
}

/** Frames are reported together after so many seconds, and levels after so many: the eye wants no more. */
const REPORT = { frames: 0.03, level: 0.1 } as const;

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

/** Serves one stream of blocks, of so many samples a second. Notes are reported at once, all else a little later. */
export const createEarServer = (sampleRate: number, tell: (report: HeardReport) => void): EarServer => {
  const meter = createLevelMeter();
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
    return createEar({ ...choice, sampleRate, band: true });
  };
  const report = (notes: readonly HeardNote[], now: number): void => {
    const level = now - levelSince >= REPORT.level ? meter.read() : null;
    if (level !== null) levelSince = now;
    since = now;
    tell({ frames, notes, begun: begun === null ? null : asSeconds(begun), level });
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
    take: ({ at, heard, sent }) => {
      const now = (at + heard.length) / sampleRate;
      ear ??= begin(at / sampleRate);
      meter.push(heard, sent);
      const made = ear?.push(heard, sent);
      frames.push(...(made?.frames ?? []).map((frame) => shiftedFrame(frame, origin)));
      const notes = (made?.notes ?? []).map((note) => shiftedNote(note, origin));
      if (notes.length > 0 || now - since >= REPORT.frames) report(notes, now);
    },
  };
};
