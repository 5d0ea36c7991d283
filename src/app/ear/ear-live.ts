import type { HeardNote } from '../../core/hearing/heard-note';
import type { PitchFrame } from '../../core/hearing/pitch-frame';
import type { HeardLevel, HeardReport } from '../../mic/microphone';

/** A moment of a heard pitch, and the note it belongs to. */
export interface HeardMoment {
  /** Seconds of the audio clock. */
  readonly time: number;
  /** Hz. */
  readonly frequency: number;
  readonly note: HeardNote;
}

/** What is heard now; read it in an animation frame. */
export interface EarLive {
  /** The note that sounds; null in silence. */
  readonly sounding: () => HeardNote | null;
  /** The latest frame, voiced or not. */
  readonly frame: () => PitchFrame | null;
  readonly level: () => HeardLevel | null;
  /** The last seconds of pitch, oldest first. */
  readonly trace: () => readonly HeardMoment[];
}

/** Keeps what is heard now. */
export interface EarMemory extends EarLive {
  take(report: HeardReport): void;
  forget(): void;
}

/** Seconds of pitch kept: four bars of a slow blues. */
const KEPT = 16;
/** Frames from before a note was sure, seconds: longer than any note takes to be. */
const UNSURE = 0.3;

/** An empty memory. */
export const createEarMemory = (): EarMemory => {
  let note: HeardNote | null = null;
  let last: PitchFrame | null = null;
  let level: HeardLevel | null = null;
  let recent: PitchFrame[] = [];
  let moments: HeardMoment[] = [];

  const add = ({ centre, frequency }: PitchFrame): void => {
    if (note !== null && frequency > 0) moments.push({ time: centre, frequency, note });
  };
  const takeNote = (next: HeardNote): void => {
    if (next.to !== null) {
      if (note?.id === next.id) note = null;
      // What is known of it at its end stands for all of it.
      moments = moments.map((each) => (each.note.id === next.id ? { ...each, note: next } : each));
      return;
    }
    note = next;
    const begun = recent.filter(({ centre }) => centre >= next.from);
    moments = moments.filter(({ time }) => time < next.from);
    for (const frame of begun) add(frame);
  };
  const takeFrame = (frame: PitchFrame): void => {
    last = frame;
    recent.push(frame);
    add(frame);
  };
  return {
    sounding: () => note,
    frame: () => last,
    level: () => level,
    trace: () => moments,
    take: (report) => {
      if (report.begun !== null) note = null;
      report.frames.forEach(takeFrame);
      report.notes.forEach(takeNote);
      level = report.level ?? level;
      const now = last?.known ?? 0;
      recent = recent.filter(({ centre }) => centre > now - UNSURE);
      if ((moments[0]?.time ?? now) < now - KEPT - 2)
        moments = moments.filter(({ time }) => time > now - KEPT);
    },
    forget: () => {
      note = null;
      last = null;
      level = null;
      recent = [];
      moments = [];
    },
  };
};
