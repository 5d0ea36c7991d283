import { type BeatGrid, stepTicks } from '../score/grid';
import type { NoteEvent } from '../score/score';
import { asTicks, type PitchClass } from '../theory/units';
import type { Program } from './program';

/** Thirds of a beat are triplets and stay where they are; anything nearer than this counts as one. */
const NEAR = 0.02;

const isThird = (share: number): boolean => {
  const thirds = share * 3;
  return Math.abs(thirds - Math.round(thirds)) < NEAR && Math.round(thirds) % 3 !== 0;
};

/** Moves a share of a beat (0–1) onto the swung grid: halves, or quarters within halves, lean with the feel. */
const swungShare = (share: number, grid: BeatGrid): number => {
  if (grid.compound || isThird(share)) return share;
  const half = stepTicks(grid, 1, 2) / grid.beatTicks;
  if (!grid.sixteenths) return share < 0.5 ? share * 2 * half : half + (share - 0.5) * 2 * (1 - half);
  const long = stepTicks(grid, 1, 4) / grid.beatTicks;
  const within = share % 0.5;
  const base = share - within;
  return within < 0.25 ? base + within * 4 * long : base + long + (within - 0.25) * 4 * (0.5 - long);
};

const swing = (at: number, grid: BeatGrid): number => {
  const beat = Math.floor(at / grid.beatTicks);
  return (beat + swungShare(at / grid.beatTicks - beat, grid)) * grid.beatTicks;
};

/**
 * What the lead plays in a chorus: the program's own notes for a key, one list after another over the choruses,
 * moved onto the feel's grid, in ticks of the whole chorus. Empty where the program has none.
 */
export const leadOfChorus = (
  { leads }: Program,
  chorus: number,
  key: PitchClass,
  grid: BeatGrid,
): readonly NoteEvent[] => {
  const takes = leads?.[key] ?? [];
  const notes = takes[chorus % Math.max(1, takes.length)] ?? [];
  return notes.map((note) => {
    const at = swing(note.at, grid);
    const length = Math.max(1, swing(note.at + note.length, grid) - at);
    return { ...note, part: 'lead', at: asTicks(at), length: asTicks(length) };
  });
};
