/** Neighbouring holes under open lips, or the two outer holes of a stretch with the tongue on those between. */
export type GripKind = 'chord' | 'split';

/** Holes that sound together, and how. */
export interface GripShape {
  readonly kind: GripKind;
  /** Lowest first. */
  readonly holes: readonly number[];
}

/** Holes a mouth covers: neighbours of two to five, splits of three to five holes wide. */
export const WIDEST_GRIP = 5;

const shapesFrom = (hole: number, last: number): readonly GripShape[] =>
  Array.from({ length: WIDEST_GRIP - 1 }, (_, i) => i + 2)
    .filter((width) => hole + width - 1 <= last)
    .flatMap((width): readonly GripShape[] => {
      const holes = Array.from({ length: width }, (_, i) => hole + i);
      const split: GripShape = { kind: 'split', holes: [hole, hole + width - 1] };
      return width === 2 ? [{ kind: 'chord', holes }] : [{ kind: 'chord', holes }, split];
    });

/** Every group of holes a mouth can cover on a harp of so many holes, by its lowest hole. */
export const gripShapes = (holes: number): readonly GripShape[] =>
  Array.from({ length: holes }, (_, i) => i + 1).flatMap((hole) => shapesFrom(hole, holes));
