import type { Meter, MeterName } from '../chart/chart';

/** True where the beat is a dotted note, divided in three: its pairs are 2 : 1 whatever the swing. */
export const isCompound = (meter: MeterName): boolean => meter === '12/8' || meter === '6/8';

/** How a beat divides in this meter at this swing. */
export interface BeatGrid {
  readonly beats: number;
  readonly beatTicks: number;
  readonly compound: boolean;
  /** Long : short of a pair; pairs are eighths, or sixteenths where `sixteenths` is true. */
  readonly ratio: number;
  readonly sixteenths: boolean;
}

/** The grid of a meter. In compound meters the eighths are thirds of the beat whatever the ratio. */
export const createGrid = (meter: Meter, ratio: number, sixteenths = false): BeatGrid => ({
  beats: meter.beats,
  beatTicks: meter.beatTicks,
  compound: isCompound(meter.name),
  ratio,
  sixteenths,
});

/** Where the off-beat lies, as a share of the beat. */
const halfShare = (grid: BeatGrid): number => {
  if (grid.compound) return 2 / 3;
  return grid.sixteenths ? 1 / 2 : grid.ratio / (grid.ratio + 1);
};

const quarterShare = (grid: BeatGrid, step: number): number => {
  if (grid.compound) return [0, 1 / 3, 2 / 3, 5 / 6][step] ?? 0;
  const half = halfShare(grid);
  const long = grid.sixteenths ? grid.ratio / (grid.ratio + 1) : 1 / 2;
  const [from, width] = step < 2 ? [0, half] : [half, 1 - half];
  return step % 2 === 0 ? from : from + width * long;
};

/** From this ratio on triplets go with the swung off-beat; a lighter swing is no triplet, and they stay even beside it. */
const TRIPLETS_FROM = 1.25;

/** The last third falls with the swung off-beat, so that a fill does not flam with the time under it. */
const thirdShare = (grid: BeatGrid, step: number): number => {
  if (grid.compound || grid.sixteenths || grid.ratio < TRIPLETS_FROM) return step / 3;
  return (halfShare(grid) * step) / 2;
};

/**
 * Ticks from the beat's start to a step of a beat cut in `of` parts: halves swing, quarters swing in pairs, thirds
 * are even in straight and compound meters and at 2:1, and end on the off-beat of other ratios; sixths are even. Throws
 * RangeError for other divisions.
 */
export const stepTicks = (grid: BeatGrid, step: number, of: number): number => {
  if (step < 0 || step >= of) throw new RangeError(`Step must be from 0 to ${of - 1}, got ${step}`);
  const shares: Readonly<Record<number, () => number>> = {
    1: () => 0,
    2: () => step * halfShare(grid),
    3: () => thirdShare(grid, step),
    4: () => quarterShare(grid, step),
    6: () => step / 6,
  };
  const share = shares[of];
  if (share === undefined) throw new RangeError(`A beat divides by 1, 2, 3, 4 or 6, got ${of}`);
  return share() * grid.beatTicks;
};

/** Sixths of a beat that are no half are triplets and sextuplets; anything nearer than this counts as one. */
const NEAR = 0.02;

const isOfSix = (share: number): boolean => {
  const sixths = share * 6;
  return Math.abs(sixths - Math.round(sixths)) < 2 * NEAR && Math.round(sixths) % 3 !== 0;
};

/** Moves a share of a beat (0–1) onto the swung grid. */
const swungShare = (grid: BeatGrid, share: number): number => {
  if (grid.compound || isOfSix(share)) return share;
  const half = halfShare(grid);
  if (!grid.sixteenths) return share < 0.5 ? share * 2 * half : half + (share - 0.5) * 2 * (1 - half);
  const long = quarterShare(grid, 1);
  const within = share % 0.5;
  const base = share - within;
  return within < 0.25 ? base + within * 4 * long : base + long + (within - 0.25) * 4 * (0.5 - long);
};

/**
 * Where a tick of the straight grid falls when it swings: halves of a beat, or quarters within halves, lean with the
 * feel; thirds and sixths are triplets and sextuplets, which players keep even, and beats of compound meters are
 * divided in three already. What is played in a beat of sextuplets goes by `swingOver`: their fourth is a half, too.
 * @param at ticks from any beat, fractions allowed.
 *
 * @example
 * // The off-beat at 2 : 1.
 * swungTicks(createGrid(METERS['4/4'], 2), 240) // 320
 */
export const swungTicks = (grid: BeatGrid, at: number): number => {
  const beat = Math.floor(at / grid.beatTicks);
  return (beat + swungShare(grid, at / grid.beatTicks - beat)) * grid.beatTicks;
};

/**
 * Swings the ticks of one part: as `swungTicks`, but a beat in which a triplet or sextuplet begins or ends stays even
 * as a whole.
 * @param ticks where the part's notes begin and end on the straight grid.
 *
 * @example
 * const grid = createGrid(METERS['4/4'], 2.5);
 * [0, 80, 160, 240, 320, 400].map(swingOver(grid, [80])) // [0, 80, 160, 240, 320, 400]
 */
export const swingOver = (grid: BeatGrid, ticks: readonly number[]): ((at: number) => number) => {
  const beatOf = (at: number): number => Math.floor(at / grid.beatTicks);
  const even = new Set(ticks.filter((at) => isOfSix(at / grid.beatTicks - beatOf(at))).map(beatOf));
  return (at) => (even.has(beatOf(at)) ? at : swungTicks(grid, at));
};
