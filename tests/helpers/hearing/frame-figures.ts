/** How well frames were heard over many takes, as the table of the benchmark shows it. */
import type { PitchFrame } from '../../../src/core/hearing/pitch-frame';
import type { Detector } from './detectors';
import type { Take, TrueNote } from './take';

interface Counts {
  voiced: number;
  right: number;
  octave: number;
  unvoiced: number;
  false: number;
  cpu: number;
  seconds: number;
  readonly cents: number[];
  /** From the breath of a note to the first report that stays right, ms; Infinity for a note that never is. */
  readonly latencies: number[];
  /** From where its reed plainly sounds, ms: negative where it was heard before. */
  readonly afterPlain: number[];
}

/** The field's half tone is the whole one here: a frame is right within this many cents (strictly). */
const TOLERANCE = 50;

const centsOff = (heard: number, truth: number): number => 1200 * Math.log2(heard / truth);

const at = ({ track }: Take, seconds: number): number =>
  Math.max(0, Math.min(track.hz.length - 1, Math.round(seconds / track.step)));

const countFrame = (counts: Counts, take: Take, frame: PitchFrame): void => {
  const i = at(take, frame.centre);
  if (take.track.judged[i] === 0) return;
  const truth = take.track.hz[i];
  if (truth === 0) {
    counts.unvoiced += 1;
    if (frame.frequency > 0) counts.false += 1;
    return;
  }
  counts.voiced += 1;
  if (frame.frequency === 0) return;
  const cents = Math.abs(centsOff(frame.frequency, truth));
  if (cents < TOLERANCE) {
    counts.right += 1;
    counts.cents.push(cents);
  } else if (Math.abs(cents - 1200) < TOLERANCE) counts.octave += 1;
};

/** Second from which a frame within a note stays right: it must tell the pitch of its centre, where the note has begun by then. */
const firstRight = (take: Take, { from, to }: TrueNote, frames: readonly PitchFrame[]): number => {
  let first = Number.POSITIVE_INFINITY;
  for (const { known, centre, frequency } of frames) {
    if (known < from || known > to) continue;
    const truth = take.track.hz[at(take, Math.max(from + 0.002, Math.min(to - 0.002, centre)))];
    const right = frequency > 0 && Math.abs(centsOff(frequency, truth)) < TOLERANCE;
    if (!right) first = Number.POSITIVE_INFINITY;
    else if (!Number.isFinite(first)) first = known;
  }
  return first;
};

/** Second at which the reed of a note reaches −12 dB of the note's level: a breath is there long before (`PitchTrack.judged`). */
const plainFrom = ({ track }: Take, { from, to }: TrueNote): number => {
  const first = track.judged.indexOf(1, Math.ceil(from / track.step));
  return first < 0 ? to : Math.min(to, first * track.step);
};

const quantile = (values: readonly number[], share: number): number =>
  [...values].sort((a, b) => a - b)[Math.floor(share * values.length)] ?? Number.NaN;

export interface FrameFigures {
  /** Percent of frames: within 50 cents of all where a reed sounds; an octave off of those; voiced where none sounds. */
  readonly right: number;
  readonly octave: number;
  readonly falselyVoiced: number;
  /** Median distance of right frames, cents. */
  readonly cents: number;
  /** Half and nine tenths of the notes are reported by then, ms after the breath. */
  readonly latency: readonly [number, number];
  /** The same after the reed plainly sounds. */
  readonly afterPlain: readonly [number, number];
  /** Percent of one core. */
  readonly cpu: number;
}

/** Measures a detector on takes. */
export const measureFrames = ({ listen }: Detector, takes: readonly Take[]): FrameFigures => {
  const counts: Counts = {
    voiced: 0,
    right: 0,
    octave: 0,
    unvoiced: 0,
    false: 0,
    cpu: 0,
    seconds: 0,
    cents: [],
    latencies: [],
    afterPlain: [],
  };
  for (const take of takes) {
    const before = process.cpuUsage();
    const frames = listen(take);
    counts.cpu += process.cpuUsage(before).user / 1e6;
    counts.seconds += take.samples.length / take.sampleRate;
    for (const frame of frames) countFrame(counts, take, frame);
    for (const note of take.notes) {
      if (note.sounds.length !== 1 || note.failed) continue;
      const first = firstRight(take, note, frames);
      counts.latencies.push(1000 * (first - note.from));
      counts.afterPlain.push(1000 * (first - plainFrom(take, note)));
    }
  }
  return {
    right: (100 * counts.right) / counts.voiced,
    octave: (100 * counts.octave) / counts.voiced,
    falselyVoiced: (100 * counts.false) / counts.unvoiced,
    cents: quantile(counts.cents, 0.5),
    latency: [quantile(counts.latencies, 0.5), quantile(counts.latencies, 0.9)],
    afterPlain: [quantile(counts.afterPlain, 0.5), quantile(counts.afterPlain, 0.9)],
    cpu: (100 * counts.cpu) / counts.seconds,
  };
};
