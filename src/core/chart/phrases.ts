import type { Bar } from './chart';

/** Where a bar stands among the phrases of a chorus. */
export interface PhrasePlace {
  /** From 0, counted through the phrase. */
  readonly bar: number;
  /** How many bars the phrase has. */
  readonly of: number;
  /** Which phrase of the chorus, from 0. */
  readonly phrase: number;
  /** Which stretch of the chorus, from 0: a named section, or eight bars of a long one. */
  readonly stretch: number;
  /** What the stretch is called: those of one name are played alike. Empty where the chart names none. */
  readonly name: string;
  /** The phrase is the last of a stretch of several. */
  readonly closes: boolean;
  /** What ends with this bar, the greatest that does. */
  readonly ends: 'nothing' | 'phrase' | 'stretch' | 'chorus';
}

type Placed = Pick<Bar, 'place'>;

/** Lines of a song have four bars, its halves and bridges eight (common practice, no source). */
const PHRASE = 4;
const STRETCH = 8;

/** A length cut into pieces of `size`; a single bar left over goes with the piece before it. */
const cut = (length: number, size: number): readonly number[] => {
  if (length < 2 * size) return length <= size + 1 ? [length] : [size, length - size];
  return [size, ...cut(length - size, size)];
};

/** Runs of bars of one named section; a section that is played again begins anew, a bar without a name goes on. */
const namedRuns = (bars: readonly Placed[]): readonly { readonly name: string; readonly bars: number }[] => {
  const runs: { name: string; bars: number }[] = [];
  for (const [i, { place }] of bars.entries()) {
    const before = bars[i - 1]?.place;
    const follows = place?.section === before?.section && (place?.bar ?? 0) > (before?.bar ?? 0);
    const goesOn = i > 0 && (place === undefined || follows);
    const run = runs.at(-1);
    if (goesOn && run !== undefined) run.bars += 1;
    else runs.push({ name: place?.section ?? '', bars: 1 });
  }
  return runs;
};

/**
 * The phrases of a chorus, a place for every bar: phrases of four bars from the beginning of each named section on, and
 * from that of every eight bars where a section has twice as many or more.
 *
 * @example
 * const chart = buildChart({ form: 'sixteen-a', key: 7, meter: '4/4' });
 * phrasesOf(chart.bars)[7].ends // 'stretch'
 */
export const phrasesOf = (bars: readonly Placed[]): readonly PhrasePlace[] => {
  const stretches = namedRuns(bars).flatMap(({ name, bars: length }) =>
    (length % STRETCH === 0 ? cut(length, STRETCH) : [length]).map((each, part) => ({
      name: part === 0 ? name : `${name} ${part + 1}`.trimStart(),
      phrases: cut(each, PHRASE),
    })),
  );
  let phrase = -1;
  return stretches.flatMap(({ name, phrases }, stretch) =>
    phrases.flatMap((of, line) => {
      phrase += 1;
      const closes = phrases.length > 1 && line === phrases.length - 1;
      const end =
        line < phrases.length - 1 ? 'phrase' : stretch < stretches.length - 1 ? 'stretch' : 'chorus';
      const place = { of, phrase, stretch, name, closes };
      return Array.from({ length: of }, (_, bar) => ({
        ...place,
        bar,
        ends: bar === of - 1 ? end : ('nothing' as const),
      }));
    }),
  );
};

/** The place of a bar that stands alone. */
export const LONE_BAR: PhrasePlace = {
  bar: 0,
  of: 1,
  phrase: 0,
  stretch: 0,
  name: '',
  closes: false,
  ends: 'chorus',
};
