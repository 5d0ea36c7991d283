/** Reading a table that describes a few keys at a key between them. */

export interface Anchor {
  readonly midi: number;
}

/** Two neighbouring entries and how far a key lies from the first (0) to the second (1). */
export interface Span<T> {
  readonly below: T;
  readonly above: T;
  readonly share: number;
}

/** The entries around a key, from a table sorted by key; outside it the nearest. Throws RangeError on an empty table. */
export const spanAt = <T extends Anchor>(anchors: readonly T[], midi: number): Span<T> => {
  const below = anchors.findLast((anchor) => anchor.midi <= midi) ?? anchors[0];
  const above = anchors.find((anchor) => anchor.midi >= midi) ?? anchors.at(-1);
  if (below === undefined || above === undefined)
    throw new RangeError('a tone table needs at least one entry');
  const width = above.midi - below.midi;
  return { below, above, share: width > 0 ? (midi - below.midi) / width : 0 };
};

/** What each octave of partial number loses for each octave a key lies above the table, dB: bodies stay where they are. */
const BEYOND = 6;

/** Levels of partials 1, 2, 3 …, duller for keys above the table. */
export const dulledAbove = <T extends Anchor>(
  levels: readonly number[],
  anchors: readonly T[],
  midi: number,
): readonly number[] => {
  const octaves = Math.max(0, midi - (anchors.at(-1)?.midi ?? midi)) / 12;
  return octaves > 0 ? levels.map((level, i) => level - BEYOND * octaves * Math.log2(i + 1)) : levels;
};

/** One figure, in a straight line from entry to entry. */
export const between = <T>({ below, above, share }: Span<T>, read: (anchor: T) => number): number =>
  read(below) + (read(above) - read(below)) * share;

/** A list of figures, each in a straight line; a list that is longer on one side keeps its own values there. */
export const betweenAll = <T>(
  { below, above, share }: Span<T>,
  read: (anchor: T) => readonly number[],
): readonly number[] => {
  const a = read(below);
  const b = read(above);
  const longer = a.length >= b.length ? a : b;
  return longer.map((value, i) => {
    const low = a[i] ?? value;
    return low + ((b[i] ?? value) - low) * share;
  });
};
