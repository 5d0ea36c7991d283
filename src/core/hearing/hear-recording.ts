import { createGripListener } from '../grips/grip-listener';
import { createReedProfiles } from '../grips/reed-profiles';
import { decimation } from '../signal/front-end';
import { highMedian } from '../theory/statistics';
import { createEar, type EarOptions } from './ear';
import { withoutMoments, withoutSeeming } from './grip-notes';
import type { HeardNote } from './heard-note';
import type { PathCosts, PitchPath } from './pitch-path';
import { createPitchTracker, DEFAULT_GATE, HOP } from './pitch-tracker';
import { reachableRanges } from './reachable';
import { createWholePath, type WholePath } from './whole-path';

/** Sound that is all there. */
export interface Recording {
  /** Mono. */
  readonly samples: Float32Array;
  /** The band as it was sent out meanwhile; absent where there was none, or nothing is known of it. */
  readonly sent?: Float32Array;
}

/** Seconds from the beginning in which the ear learns the way of the band before it listens from the beginning. */
const LEARNT = 4;
/** Seconds heard between two words about how far it has come. */
const STRETCH = 2;

/**
 * What is shorter and so far below the usual level of the recording is what a band leaves; without one, a room. Seconds,
 * dB.
 */
const FAINT = { shorter: 0.12, overBand: 14, alone: 17 } as const;
/** What is left of the band's chords looks like grips, at least so far below the usual level, and so does hum. dB. */
const LEFT_OVER = { overBand: 12, alone: 14 } as const;
/** Single notes that are enough to know the usual level by. */
const ENOUGH = 4;
/**
 * What begins so soon and is shorter may be the band's first stroke, whose way there was learnt from later ones. Seconds.
 */
const FIRST_STROKES = { before: 0.3, shorter: 0.2 } as const;

/** Leaves out what is too short and soft to be played; levels of single notes decide what is soft, where there are any. */
const withoutFaint = (notes: readonly HeardNote[], band: boolean): readonly HeardNote[] => {
  const single = notes.filter(({ together }) => together.length === 0);
  const usual = highMedian((single.length < ENOUGH ? notes : single).map(({ level }) => level));
  const where = band ? 'overBand' : 'alone';
  const isLeftOver = ({ together, level }: HeardNote): boolean =>
    together.length > 0 && level < usual - LEFT_OVER[where];
  const isStroke = ({ from, to }: HeardNote): boolean =>
    band && to !== null && from < FIRST_STROKES.before && to - from < FIRST_STROKES.shorter;
  return notes.filter((note) => {
    const { from, to, level } = note;
    if (isLeftOver(note) || isStroke(note)) return false;
    return to === null || to - from >= FAINT.shorter || level > usual - FAINT[where];
  });
};

/** A path that is known already. */
const known = (places: readonly number[]): PitchPath => {
  let next = 0;
  return {
    step: () => {
      next += 1;
      return places[next - 1] ?? -1;
    },
    scores: () => new Float64Array(0),
    silence: () => 0,
  };
};

/**
 * Hears a whole recording, twice: what comes later decides as well what a pitch was, and how the band comes back is
 * known from the beginning, as are the reeds. Tells how much of it is done (0 to 1), and at last which notes it has.
 * Throws RangeError as `createEar` does.
 */
export const hearRecording = (
  { samples, sent }: Recording,
  options: Omit<EarOptions, 'band' | 'path' | 'foreseen'>,
  tell: (share: number, notes: readonly HeardNote[]) => void,
): void => {
  const { sampleRate, harp, reference } = options;
  const band = sent !== undefined;
  const size = Math.round(STRETCH * sampleRate);
  const learnt = LEARNT * sampleRate;
  let whole: WholePath | null = null;
  const path = (places: number, costs: PathCosts): PitchPath => {
    whole = createWholePath(places, costs);
    return whole.path;
  };
  const profiles = options.profiles ?? createReedProfiles(harp, reference);
  const rate = sampleRate / decimation(sampleRate);
  const reeds = createGripListener({ gate: DEFAULT_GATE, ...options, rate, hop: HOP, profiles });
  const first = createPitchTracker({
    ...{ ...options, band, path },
    ranges: reachableRanges(harp, reference),
    onHop: (hop) => reeds.hop(hop),
    onReading: (reading) => reeds.frame(reading),
  });
  if (sent) first.learn(samples.subarray(0, learnt), sent.subarray(0, learnt));
  const eachStretch = (take: (from: number, sound: Float32Array, sent?: Float32Array) => void): void => {
    for (let from = 0; from < samples.length; from += size)
      take(from, samples.subarray(from, from + size), sent?.subarray(from, from + size));
  };
  eachStretch((from, sound, band) => {
    first.push(sound, band);
    tell((0.5 * from) / samples.length, []);
  });
  const places = (whole as WholePath | null)?.decide() ?? [];
  const ear = createEar({ ...options, band, path: () => known(places), foreseen: true, profiles });
  if (sent) ear.learn(samples.subarray(0, learnt), sent.subarray(0, learnt));
  const notes: HeardNote[] = [];
  eachStretch((from, sound, band) => {
    notes.push(...ear.push(sound, band).notes);
    tell(0.5 + (0.5 * from) / samples.length, []);
  });
  notes.push(...ear.end());
  tell(1, withoutSeeming(withoutFaint(withoutMoments(notes.filter(({ to }) => to !== null)), band)));
};
