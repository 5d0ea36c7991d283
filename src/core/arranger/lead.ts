import type { Chart } from '../chart/chart';
import type { BarShape } from '../players/passage';
import { type BeatGrid, swingOver } from '../score/grid';
import type { NoteEvent } from '../score/score';
import { asTicks, type PitchClass } from '../theory/units';
import type { Program } from './program';

/**
 * What the lead plays in a chorus: the program's own notes for a key, one list after another over the choruses,
 * moved onto the feel's grid, in ticks of the whole chorus. Empty where the program has none.
 */
export const leadOfChorus = (
  { leads }: Pick<Program, 'leads'>,
  chorus: number,
  key: PitchClass,
  grid: BeatGrid,
): readonly NoteEvent[] => {
  const takes = leads?.[key] ?? [];
  const notes = takes[chorus % Math.max(1, takes.length)] ?? [];
  const swung = swingOver(
    grid,
    notes.flatMap(({ at, length }) => [at, at + length]),
  );
  return notes.map((note) => {
    const at = swung(note.at);
    const length = Math.max(1, swung(note.at + note.length) - at);
    return { ...note, at: asTicks(at), length: asTicks(length) };
  });
};

/**
 * Marks the bars in which the lead plays, and those that are the player's turn: where the program has a lead for the key,
 * those of a chorus in which it is silent. `shapes[i]` describes `chart.bars[i]` of the whole chorus.
 */
export const withHarpsTurns = (
  { leads }: Pick<Program, 'leads'>,
  chorus: number,
  { chart, shapes }: { readonly chart: Chart; readonly shapes: readonly BarShape[] },
): readonly BarShape[] => {
  const takes = leads?.[chart.key] ?? [];
  if (takes.every((notes) => notes.length === 0)) return shapes;
  const notes = takes[chorus % takes.length] ?? [];
  return shapes.map((shape, index) => {
    const bar = chart.bars[index];
    const from = bar?.at ?? 0;
    const until = from + (bar?.length ?? 0);
    const led = notes.some(({ at, length }) => at < until && at + length > from + 1);
    return { ...shape, led, harpsTurn: !led };
  });
};
