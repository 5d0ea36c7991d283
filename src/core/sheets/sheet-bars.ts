import { METERS } from '../chart/build-chart';
import type { Meter, MeterName } from '../chart/chart';
import { readChord } from '../chart-text/read-chord';

/**
 * Bars of a sheet of music on their way to a typed chart: chord symbols at their places, whatever notes lie under
 * them. What they become is text, so that everything read from a file can be seen, mended and kept as any chart.
 */

/** More measures than any chart or short melody takes are not read. */
export const MOST_MEASURES = 2000;

/** A symbol at a place of its bar, as a share of the bar from 0 up to 1. */
export interface PlacedSymbol {
  readonly at: number;
  /** `N.C.` where no chord is to be played. */
  readonly symbol: string;
}

/** What is written for a meter that is no chart's: one that has as many beats, or the nearest. */
export const meterFor = (beats: number, unit: number): MeterName => {
  if (unit === 8 && beats % 3 === 0)
    return beats === 12 ? '12/8' : beats === 9 || beats === 3 ? '3/4' : '6/8';
  return beats % 3 === 0 && beats % 4 !== 0 ? '3/4' : '4/4';
};

/** What to tell of chords that begin neither on a sixteenth nor on a triplet eighth. */
const MOVED = 'Chords that begin between sixteenths went to the nearest.';

/**
 * Shares in which a bar is written, the plainest first: each parts it evenly, as the reader of charts does. The last
 * are the sixteenths.
 */
const sharesIn = ({ beats, beatTicks }: Meter): readonly number[] => {
  const parts = beatTicks === 720 ? [1, 2, 3, 4, 6] : [1, 2, 3, 4];
  return [1, ...(beats % 2 === 0 ? [2] : []), ...parts.map((part) => part * beats)];
};

const NEAR = 1e-6;

const isOn = (at: number, shares: number): boolean => Math.abs(at * shares - Math.round(at * shares)) < NEAR;

/** A chord symbol as charts write it: some programs' spellings become usual ones; what is no chord stays as it is. */
const wordOf = (symbol: string): string => {
  const plain = symbol.replace(/\s+/g, '');
  return readChord(plain, 'C') === null ? plain.replace(/[|:[\]]/g, '') : plain;
};

/**
 * The text of a bar: its symbols with `/` for what they are held. Places off every share go to the nearest sixteenth,
 * which is told in `left`; of two at one place the later stays. Where nothing begins on the first beat, `/` goes on with
 * what was.
 */
export const barWords = (symbols: readonly PlacedSymbol[], meter: MeterName, left: Set<string>): string => {
  const placed = new Map<number, string>();
  const all = sharesIn(METERS[meter]);
  const fits = all.find((shares) => symbols.every(({ at }) => isOn(at, shares)));
  const shares = fits ?? all.at(-1) ?? 1;
  if (fits === undefined) left.add(MOVED);
  for (const { at, symbol } of symbols)
    placed.set(Math.min(Math.round(at * shares), shares - 1), wordOf(symbol));
  if (placed.size === 0) return '';
  const starts = [...placed.keys()].toSorted((a, b) => a - b);
  const lead = starts[0] ?? 0;
  const words = starts.map((start, i) => {
    const held = (starts[i + 1] ?? shares) - start;
    return `${placed.get(start)}${' /'.repeat(held - 1)}`;
  });
  return [...Array.from({ length: lead }, () => '/'), ...words].join(' ');
};

/**
 * The line of a chart for an upbeat: its symbols on the beats nearest to them, `/` for what they are held.
 * @param symbols at places in beats. @param beats how long it lasts.
 */
export const pickUpLine = (symbols: readonly PlacedSymbol[], beats: number, meter: MeterName): string => {
  const whole = Math.min(Math.max(1, Math.round(beats)), METERS[meter].beats - 1);
  const placed = new Map(
    symbols.map(({ at, symbol }) => [Math.min(Math.round(at), whole - 1), wordOf(symbol)] as const),
  );
  const words = Array.from({ length: whole }, (_, beat) => placed.get(beat) ?? (beat === 0 ? 'N.C.' : '/'));
  return `Pick-up: ${words.join(' ')}`;
};

/** A chart read from a file: text for the chart editor, and in words what the file had that it has not. */
export interface ImportedChart {
  readonly name: string;
  readonly text: string;
  readonly left: readonly string[];
}
