import type { TechniqueChoice } from '../harp/reach';

/** Shortest notes a level plays, in beats; 0 plays all. */
export const SHORTEST_NOTES = [0, 0.5, 1] as const;

/** Longest name of a level, in letters. */
export const LONGEST_LEVEL = 30;

/** Part of a class: what its players can do, under a name the teacher gives it. */
export interface ClassLevel {
  readonly name: string;
  readonly technique: TechniqueChoice;
  /** Notes shorter than this share of a beat are taken into the one before. */
  readonly shortest: (typeof SHORTEST_NOTES)[number];
}

/** Three levels to begin with; a teacher names them anew. */
export const CLASS_LEVELS: readonly ClassLevel[] = [
  {
    name: 'Front row',
    technique: { drawBends: false, blowBends: false, overbends: false, off: [] },
    shortest: 1,
  },
  {
    name: 'Middle row',
    technique: { drawBends: true, blowBends: false, overbends: false, off: [] },
    shortest: 0.5,
  },
  {
    name: 'Back row',
    technique: { drawBends: true, blowBends: true, overbends: true, off: [] },
    shortest: 0,
  },
];
