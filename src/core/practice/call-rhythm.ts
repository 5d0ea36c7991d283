import type { Bar, Meter } from '../chart/chart';
import { pick, type Random } from '../theory/random';
import { EIGHTH_TICKS, RHYTHM_CELLS, type RhythmCell } from './rhythm-cells';

/** A note's place in a call: ticks from the chart's start. */
export interface Moment {
  readonly at: number;
  readonly length: number;
}

/** What a call is in what a chorus tells: an idea, the idea over another chord, something else, and the end of it. */
export type CallRole = 'motif' | 'variation' | 'contrast' | 'conclusion';

/**
 * The roles of so many calls in a row: two are question and answer, three say the idea twice and then answer it, as a
 * verse of the blues does (Open Music Theory, "Blues Melodies and the Blues Scale"), four put something else between.
 */
export const rolesOf = (count: number): readonly CallRole[] =>
  Array.from({ length: count }, (_, i): CallRole => {
    const last = i === count - 1;
    if (count > 1 && (last || i % 4 === 3)) return 'conclusion';
    if (i % 4 === 2) return 'contrast';
    return i % 4 === 1 ? 'variation' : 'motif';
  });

/** A cell with so many notes at most: the shortest ones are taken into the note before them. */
const thinned = (cell: RhythmCell, most: number): RhythmCell => {
  const notes = cell.filter((each) => each > 0).length;
  if (notes <= most) return cell;
  const joins = cell
    .map((each, i) => ({ each, i }))
    .filter(({ each, i }) => i > 0 && each > 0 && (cell[i - 1] ?? 0) > 0)
    .sort((a, b) => a.each - b.each || b.i - a.i);
  const at = joins[0]?.i;
  if (at === undefined) return cell;
  const joined = cell.flatMap((each, i) =>
    i === at ? [] : i === at - 1 ? [each + (cell[at] ?? 0)] : [each],
  );
  return thinned(joined, most);
};

/** The cells of a call, a bar each: fresh ones, or those of the idea with another end. */
export const cellsFor = (
  { bars, meter }: { readonly bars: readonly Bar[]; readonly meter: Meter },
  {
    role,
    motif,
    mostNotes,
  }: {
    readonly role: CallRole;
    readonly motif: readonly RhythmCell[] | null;
    readonly mostNotes: number;
  },
  random: Random,
): readonly RhythmCell[] => {
  const { opening, closing } = RHYTHM_CELLS[meter.name];
  const kept = motif !== null && motif.length === bars.length && role !== 'contrast' ? motif : null;
  return bars.map((_, i) => {
    const last = i === bars.length - 1;
    const old = kept?.[i];
    // The idea is known again by its beginning; a variation of one bar keeps even its end.
    if (old !== undefined && (!last || bars.length === 1)) return old;
    // In long calls every fourth bar ends early too: nobody plays eight bars on one breath.
    return thinned(pick(random, last || i % 4 === 3 ? closing : opening), mostNotes);
  });
};

/** Where the notes of cells fall. */
export const momentsOf = (bars: readonly Bar[], cells: readonly RhythmCell[]): readonly Moment[] =>
  bars.flatMap((bar, i) => {
    const moments: Moment[] = [];
    let at: number = bar.at;
    for (const eighths of cells[i] ?? []) {
      const length = Math.abs(eighths) * EIGHTH_TICKS;
      if (eighths > 0) moments.push({ at, length });
      at += length;
    }
    return moments;
  });
