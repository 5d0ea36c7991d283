import type { Chart } from '../chart/chart';
import { type FeelId, feelOf } from '../feels/feels';
import { MINOR_TURNAROUNDS, type TurnaroundId, turnaroundFigure } from '../feels/turnaround-figures';
import type { Style } from '../players/style';
import { withTurnaround } from '../players/turnaround';
import { createRandom, pick, seedFrom } from '../theory/random';

/** How choruses turn around: a figure that changes from chorus to chorus, one for all, or as the chart has it. */
export const TURNAROUNDS = ['varied', 'one', 'as written'] as const;
export type Turnarounds = (typeof TURNAROUNDS)[number];

/** Above this tempo a chord a beat goes by too fast to read (a beat of half a second; common practice, no source). */
const ONE_BEAT_BPM = 120;
/** The cycle comes into a shuffle from about here (common practice, no source). */
const CYCLE_BPM = 110;
/** Another figure than the song's own is played this often: every third chorus or so (common practice, no source). */
const OTHER_CHANCE = 0.35;

/** The last two bars turn round: from home (or the chord a third above, in jazz) to the five chord. */
const turnsAround = (chart: Chart): boolean => {
  const [first, second] = chart.bars.slice(-2);
  const above = (root: number | undefined): number => ((root ?? 0) - chart.key + 12) % 12;
  if (chart.bars.length < 4 || first === undefined || second === undefined) return false;
  return [0, 4].includes(above(first.chords[0]?.chord.root)) && above(second.chords.at(-1)?.chord.root) === 7;
};

/** Chords other than one, four and five in the last two bars: the form has jazz changes. */
const hasJazzChanges = (chart: Chart): boolean =>
  chart.bars
    .slice(-2)
    .flatMap(({ chords }) => chords)
    .some(({ chord }) => ![0, 5, 7].includes((chord.root - chart.key + 12) % 12));

const changesByBeat = (id: TurnaroundId): boolean =>
  turnaroundFigure(id).chords.some((text) => text.split(' ').filter((mark) => mark !== '-').length > 2);

/** The figures a feel may turn a chart around with at a tempo, the usual one first; none where it does not turn. */
export const turnaroundBook = (chart: Chart, feel: FeelId, tempo: number): readonly TurnaroundId[] => {
  if (!turnsAround(chart)) return [];
  // Jazz changes turn around as swing does, whatever they are played in.
  const major = feelOf(hasJazzChanges(chart) ? 'swing' : feel).turnarounds;
  const book = chart.mode === 'minor' ? MINOR_TURNAROUNDS : major;
  return book.filter(
    (id) =>
      (tempo <= ONE_BEAT_BPM || !changesByBeat(id)) &&
      (tempo >= CYCLE_BPM || id !== 'cycle' || feelOf(feel).swing !== 2),
  );
};

const chosenFor = (book: readonly TurnaroundId[], seed: number, chorus: number): TurnaroundId | undefined => {
  if (book.length === 0) return undefined;
  const main = pick(createRandom(seedFrom(seed, 'turnaround')), book);
  const random = createRandom(seedFrom(seed, 'turnaround', chorus));
  const others = book.filter((id) => id !== main);
  return others.length > 0 && random() < OTHER_CHANCE ? pick(random, others) : main;
};

/** What a chart turned around needs to know of the song. */
export interface TurnaroundChoice {
  readonly style: Pick<Style, 'feel' | 'seed'>;
  readonly tempo: number;
  readonly turnarounds: Turnarounds;
}

/** The chart as a chorus turns it around: one figure for everybody, in place of the last two bars. */
export const turnedAround = (
  chart: Chart,
  { style, tempo, turnarounds }: TurnaroundChoice,
  chorus: number,
): Chart => {
  if (turnarounds === 'as written') return chart;
  const book = turnaroundBook(chart, style.feel, tempo);
  const id = turnarounds === 'one' ? book[0] : chosenFor(book, style.seed, chorus);
  return id === undefined ? chart : withTurnaround(chart, turnaroundFigure(id));
};
