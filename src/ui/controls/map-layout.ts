import type { MarkedSound } from '../../core/fit/mark-sounds';

/** Where a sound stands on the comb: column = hole, row counted from the comb itself, above (+) or below (−). */
export interface CombPlace {
  readonly mark: MarkedSound;
  readonly hole: number;
  readonly row: number;
}

/** From the natural note outwards: its bends, the deepest last, then the overbend. */
const outwards = ({ sound: a }: MarkedSound, { sound: b }: MarkedSound): number =>
  Number(a.technique === 'overbend') - Number(b.technique === 'overbend') || a.bend - b.bend;

/**
 * Places sounds on the comb by the breath that makes them: everything blown above its hole, everything drawn below.
 * On a hole only the higher reed bends and only the lower one overbends, so no place is wanted twice.
 */
export const combPlaces = (marks: readonly MarkedSound[]): readonly CombPlace[] => {
  const holes = Math.max(...marks.map(({ sound }) => sound.hole));
  return Array.from({ length: holes }, (_, i) => i + 1).flatMap((hole) =>
    (['blow', 'draw'] as const).flatMap((breath) =>
      marks
        .filter(({ sound }) => sound.hole === hole && sound.breath === breath)
        .sort(outwards)
        .map((mark, i) => ({ mark, hole, row: breath === 'blow' ? i + 1 : -(i + 1) })),
    ),
  );
};

/** A hole's place from the left, 1 the leftmost; a mirrored harp has its low notes on the right. */
export const acrossOf = (hole: number, holes: number, mirrored: boolean): number =>
  mirrored ? holes + 1 - hole : hole;
