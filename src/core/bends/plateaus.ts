/** Where a pitch stands still: what is held, between the ways there. */

import { median } from '../theory/statistics';

/** The pitch at a moment. */
export interface PitchMoment {
  /** Seconds. */
  readonly time: number;
  /** From the target. */
  readonly cents: number;
}

/** A stretch in which the pitch stands. */
export interface Plateau {
  readonly from: number;
  readonly to: number;
  /** Median of its middle 60 %: what listeners take for its pitch (ICMPC 2000, on vibrato). */
  readonly cents: number;
}

/**
 * The pitch is taken as the median over a swing of vibrato, `window` seconds at 5.5 a second; it stands where that moves
 * by less than `still` cents in `step` seconds: 100 cents a second, where a deliberate slow bend goes 250 (common
 * practice, no source). A stretch that is shorter than `least`, or drifts beyond `spread`, is none.
 */
const STANDING = { window: 0.18, step: 0.1, still: 10, spread: 30, least: 0.08 } as const;
/** Share of a stretch's moments that lie near its pitch, within a wide vibrato's swing in cents: a squeal's do not. */
const NEAR = { share: 0.6, cents: 45 } as const;
/** Share of a stretch that its pitch is taken from. */
const MIDDLE = 0.6;
/** Gaps so long are no end of a stretch: the ear misses a moment now and then. Seconds. */
const GAP = 0.06;

const within = (moments: readonly PitchMoment[], from: number, to: number): readonly number[] =>
  moments.filter(({ time }) => time >= from && time <= to).map(({ cents }) => cents);

/** Stretches of pitch without a gap. */
export const stretchesOf = (
  moments: readonly PitchMoment[],
  gap = GAP,
): readonly (readonly PitchMoment[])[] => {
  const stretches: PitchMoment[][] = [];
  for (const moment of moments) {
    const last = stretches.at(-1);
    const before = last?.at(-1);
    if (last === undefined || before === undefined || moment.time - before.time > gap)
      stretches.push([moment]);
    else last.push(moment);
  }
  return stretches;
};

interface Smoothed extends PitchMoment {
  readonly still: boolean;
}

const smoothed = (stretch: readonly PitchMoment[]): readonly Smoothed[] => {
  const first = stretch[0]?.time ?? 0;
  const last = stretch.at(-1)?.time ?? 0;
  const half = Math.min(STANDING.window, last - first) / 2;
  const at = (time: number): number => {
    // At the ends the window keeps inside, so that it stays as wide.
    const middle = Math.min(last - half, Math.max(first + half, time));
    return median(within(stretch, middle - half, middle + half));
  };
  return stretch.map(({ time }) => {
    const before = Math.max(first, time - STANDING.step / 2);
    const after = Math.min(last, time + STANDING.step / 2);
    return { time, cents: at(time), still: Math.abs(at(after) - at(before)) < STANDING.still };
  });
};

/** The middle of a stretch: its pitch without the way in and out. */
const middleCents = (moments: readonly PitchMoment[], from: number, to: number): number => {
  const edge = ((to - from) * (1 - MIDDLE)) / 2;
  return median(within(moments, from + edge, to - edge));
};

const plateausOf = (stretch: readonly PitchMoment[]): readonly Plateau[] => {
  const groups: Smoothed[][] = [];
  let open = false;
  for (const moment of smoothed(stretch)) {
    const group = groups.at(-1);
    const near = Math.abs(moment.cents - (group?.[0]?.cents ?? moment.cents)) <= STANDING.spread;
    if (moment.still && open && near && group !== undefined) group.push(moment);
    else if (moment.still) groups.push([moment]);
    open = moment.still;
  }
  return groups.flatMap((group) => {
    const [from, to] = [group[0]?.time ?? 0, group.at(-1)?.time ?? 0];
    const cents = middleCents(stretch, from, to);
    const all = within(stretch, from, to);
    const near = all.filter((each) => Math.abs(each - cents) <= NEAR.cents);
    const stands = to - from >= STANDING.least && near.length >= NEAR.share * all.length;
    return stands ? [{ from, to, cents }] : [];
  });
};

/** Where the pitch stands, in the order of time. */
export const findPlateaus = (moments: readonly PitchMoment[]): readonly Plateau[] =>
  stretchesOf(moments).flatMap(plateausOf);
