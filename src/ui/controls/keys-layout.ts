import type { MarkedSound } from '../../core/fit/mark-sounds';
import type { Breath } from '../../core/harp/harp';
import { acrossOf } from './map-layout';

/** A stretch of the piano up its own side, with the holes that sound in it; columns of the drawing's grid. */
export interface KeysPart {
  /** MIDI numbers, highest first. */
  readonly pitches: readonly number[];
  readonly piano: number;
  readonly holes: readonly { readonly hole: number; readonly column: number }[];
}

/** A line from a reed's natural note to the last note it reaches one way. */
export interface Stem {
  readonly hole: number;
  readonly breath: Breath;
  readonly over: boolean;
  readonly column: number;
  readonly row: number;
  readonly endRow: number;
}

/** Where everything of the Keys drawing stands in its grid. */
export interface KeysLayout {
  readonly parts: readonly KeysPart[];
  readonly rows: number;
  /** `grid-template-columns`. */
  readonly columns: string;
  /** The row of a pitch, 1 the highest. */
  readonly rowOf: (pitch: number) => number;
  /** The column of a hole in the part that holds a pitch. */
  readonly columnOf: (hole: number, pitch: number) => number;
  readonly stems: readonly Stem[];
}

interface Span {
  readonly low: number;
  readonly high: number;
}

/** Rows a last part may have above its octave before the parts are made even instead. */
const MOST_ABOVE = 4;
const OCTAVE = 12;

const spanOf = (marks: readonly MarkedSound[]): Span => {
  const pitches = marks.map(({ sound }) => sound.pitch);
  return { low: Math.min(...pitches), high: Math.max(...pitches) };
};

/** Octaves where they suffice, so that a note is at one height in every part; otherwise parts of one size. */
const splitSpan = ({ low, high }: Span, parts: number): readonly Span[] => {
  const total = high - low + 1;
  const octaves = total - OCTAVE * (parts - 1);
  const size = octaves > 0 && octaves <= OCTAVE + MOST_ABOVE ? OCTAVE : Math.ceil(total / parts);
  return Array.from({ length: parts }, (_, i) => ({
    low: low + i * size,
    high: i === parts - 1 ? high : Math.min(high, low + (i + 1) * size - 1),
  })).filter((span) => span.low <= span.high);
};

interface Room {
  readonly width: number;
  readonly height: number;
}

/** The least a row, a hole, a piano and the gap between parts need to be read, and the hole numbers' height, in px. */
export const READABLE = { row: 16, hole: 30, piano: 40, gap: 10, holes: 34 } as const;
const MOST_PARTS = 4;

const sounding = (marks: readonly MarkedSound[], { low, high }: Span): ReadonlySet<number> =>
  new Set(marks.flatMap(({ sound }) => (sound.pitch >= low && sound.pitch <= high ? [sound.hole] : [])));

/**
 * In how many parts side by side the piano is laid so that all of it is seen in a room, in px: the fewest that fit.
 * One where none does; then the drawing scrolls.
 */
export const partsFor = (marks: readonly MarkedSound[], { width, height }: Room): number => {
  const fits = (wanted: number): boolean => {
    const spans = splitSpan(spanOf(marks), wanted);
    const rows = Math.max(...spans.map(({ low, high }) => high - low + 1));
    const holes = spans.reduce((sum, span) => sum + sounding(marks, span).size, 0);
    const across = spans.length * READABLE.piano + (spans.length - 1) * READABLE.gap + holes * READABLE.hole;
    return rows * READABLE.row + READABLE.holes <= height && across <= width;
  };
  return Array.from({ length: MOST_PARTS }, (_, i) => i + 1).find(fits) ?? 1;
};

/** Holes narrower than this, in px, have no room for strokes and notes beside arrow and degree. */
const NARROW_HOLE = 62;

/** Whether a piano in so many parts leaves its holes little width. */
export const isNarrow = (marks: readonly MarkedSound[], parts: number, width: number): boolean => {
  const spans = splitSpan(spanOf(marks), parts);
  const holes = spans.reduce((sum, span) => sum + sounding(marks, span).size, 0);
  return (width - spans.length * (READABLE.piano + READABLE.gap)) / holes < NARROW_HOLE;
};

const stemsOf = (
  marks: readonly MarkedSound[],
  spans: readonly Span[],
  at: Pick<KeysLayout, 'rowOf' | 'columnOf'>,
): readonly Stem[] =>
  marks
    .filter(({ sound }) => sound.technique === 'natural')
    .flatMap(({ sound: { hole, breath, pitch } }) => {
      const own = marks.filter(
        ({ sound }) => sound.hole === hole && sound.breath === breath && sound.technique !== 'natural',
      );
      return [false, true].flatMap((over) => {
        const reached = own.filter(({ sound }) => (sound.technique === 'overbend') === over);
        if (reached.length === 0) return [];
        const ends = [pitch, ...reached.map(({ sound }) => sound.pitch)];
        return spans.flatMap(({ low, high }) => {
          const [from, to] = [Math.min(high, Math.max(...ends)), Math.max(low, Math.min(...ends))];
          if (from < to) return [];
          const column = at.columnOf(hole, from);
          return column === 0
            ? []
            : [{ hole, breath, over, column, row: at.rowOf(from), endRow: at.rowOf(to) }];
        });
      });
    });

/** Lays the harp out against a piano in parts side by side, the low notes left, or right where it is mirrored. */
export const keysLayout = (marks: readonly MarkedSound[], wanted: number, mirrored: boolean): KeysLayout => {
  const holes = Math.max(...marks.map(({ sound }) => sound.hole));
  const rising = splitSpan(spanOf(marks), wanted);
  const rows = Math.max(...rising.map(({ low, high }) => high - low + 1));
  const spans = mirrored ? rising.toReversed() : rising;
  let column = 0;
  const parts = spans.map(({ low, high }): KeysPart => {
    const across = [...sounding(marks, { low, high })].sort(
      (a, b) => acrossOf(a, holes, mirrored) - acrossOf(b, holes, mirrored),
    );
    const piano = column + 1;
    column += across.length + 2;
    return {
      pitches: Array.from({ length: high - low + 1 }, (_, i) => high - i),
      piano,
      holes: across.map((hole, i) => ({ hole, column: piano + 1 + i })),
    };
  });
  const spanAt = (pitch: number): number => spans.findIndex(({ low, high }) => pitch >= low && pitch <= high);
  const rowOf = (pitch: number): number => rows - (pitch - (spans[spanAt(pitch)]?.low ?? pitch));
  const columnOf = (hole: number, pitch: number): number =>
    parts[spanAt(pitch)]?.holes.find((each) => each.hole === hole)?.column ?? 0;
  return {
    parts,
    rows,
    columns: parts
      .map((part) => `var(--piano) repeat(${part.holes.length}, minmax(0, 1fr))`)
      .join(' var(--between) '),
    rowOf,
    columnOf,
    stems: stemsOf(marks, spans, { rowOf, columnOf }),
  };
};
