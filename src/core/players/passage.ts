import type { Chart } from '../chart/chart';
import { LONE_BAR, type PhrasePlace } from '../chart/phrases';
import type { PlayedFeel } from '../feels/feel';
import type { Level } from '../feels/level';
import type { BeatGrid } from '../score/grid';
import type { PartId } from '../score/score';
import type { Chord } from '../theory/chord';
import type { ClickPlace } from './click';
import type { Style } from './style';
import type { TurnaroundLine } from './turnaround';

/** Fills, the smallest first. */
export const FILL_SIZES = ['cue', 'pick-up', 'beat', 'half', 'bar'] as const;

/**
 * How much of a bar a fill takes: a stroke of kick and snare before the next bar under the time that goes on, an off-beat
 * that leads in, the last beat, half a bar, all of it.
 */
export type FillSize = (typeof FILL_SIZES)[number];

/** What the band does in one bar. */
export interface BarShape {
  readonly bass: 'play' | 'hits' | 'tacet';
  readonly chords: 'play' | 'hits' | 'tacet';
  readonly drums: 'time' | 'hits' | 'solo' | 'tacet';
  /** Where the band strikes together in bars of hits: a step pattern, `x` short, `h` held. */
  readonly hits: string;
  readonly level: Level;
  /** How much is going on, 0–1: chords rise with it. */
  readonly energy: number;
  /** Factor on velocities. */
  readonly gain: number;
  readonly fill: FillSize | 'none';
  /** A cymbal on the first beat. */
  readonly crash: boolean;
  /** Where it stands among the phrases of its chorus. */
  readonly phrase: PhrasePlace;
  /** The player's turn in trading: chords leave all the room there is. */
  readonly harpsTurn: boolean;
  /** The lead plays: chords are no busier than what they accompany. */
  readonly led: boolean;
}

/** Bars to arrange: what every part needs to know, and nothing else. */
export interface Passage {
  readonly chart: Chart;
  /** `shapes[i]` describes `chart.bars[i]`. */
  readonly shapes: readonly BarShape[];
  /** The chord that follows the last bar, which lines aim at; null where nothing follows. */
  readonly next: Chord | null;
  /** What the bass has under the last two bars where they are a known turnaround; null elsewhere. */
  readonly turnaround: TurnaroundLine | null;
  /** The harp's home note, which chords stay below where room is asked for; null takes the usual roof. */
  readonly harpHome: number | null;
  /** What the harp is heard to do; null where nobody listens. */
  readonly harp: 'plays' | 'rests' | null;
  /** How whoever plays divides the beat. */
  readonly grid: BeatGrid;
  /** How each part does. */
  readonly grids: Readonly<Record<Exclude<PartId, 'click'>, BeatGrid>>;
  /** Beats a minute, as the bars go by. */
  readonly tempo: number;
  readonly click: { readonly place: ClickPlace; readonly firstBar: number };
  readonly feel: PlayedFeel;
  readonly style: Style;
  readonly seed: number;
}

/** The passage as a part sees it. */
export const passageFor = (passage: Passage, part: keyof Passage['grids']): Passage => ({
  ...passage,
  grid: passage.grids[part],
});

/** Whether bars go at half the speed; three and two beats have no half time. */
export const isHalfTime = ({ style, grid }: Pick<Passage, 'style' | 'grid'>): boolean =>
  style.time === 'half-time' && grid.beats === 4;

/** A bar in which everybody plays at normal strength, with no fill and no cymbal. */
export const PLAIN_SHAPE: BarShape = {
  bass: 'play',
  chords: 'play',
  drums: 'time',
  hits: 'x',
  level: 1,
  energy: 0.6,
  gain: 1,
  fill: 'none',
  crash: false,
  phrase: LONE_BAR,
  harpsTurn: false,
  led: false,
};

/** One chord within one bar. */
export interface Segment {
  readonly chord: Chord;
  readonly at: number;
  readonly length: number;
  readonly bar: number;
  /** True where the chord begins, false where it goes on from the bar before. */
  readonly change: boolean;
  /** How many bars this chord has lasted before this bar. */
  readonly barsHeld: number;
  /** The chord that follows this segment. */
  readonly next: Chord | null;
}

const sameChord = (a: Chord | null, b: Chord | null): boolean =>
  a !== null && b !== null && a.symbol === b.symbol && a.bass === b.bass;

/** The chords of a passage cut at the bar lines, each knowing what follows. */
export const segmentsOf = (passage: Pick<Passage, 'chart' | 'next'>): readonly Segment[] => {
  const spans = passage.chart.bars.flatMap((bar, index) =>
    bar.chords.map((span) => ({ ...span, bar: index })),
  );
  const segments: Segment[] = [];
  for (const [i, span] of spans.entries()) {
    const before = segments[i - 1];
    const change = !sameChord(before?.chord ?? null, span.chord);
    const barsHeld = change || before === undefined ? 0 : before.barsHeld + (before.bar < span.bar ? 1 : 0);
    const next = spans[i + 1]?.chord ?? passage.next;
    segments.push({
      chord: span.chord,
      at: span.at,
      length: span.length,
      bar: span.bar,
      change,
      barsHeld,
      next,
    });
  }
  return segments;
};

/**
 * The bar in which a chorus turns around: the last but one, when it rests on the home chord and the five chord
 * follows. Null where the chorus ends another way.
 */
export const turnaroundBar = ({ chart }: Passage): number | null => {
  const bar = chart.bars.length - 2;
  const [home, more] = chart.bars[bar]?.chords ?? [];
  const coming = chart.bars[bar + 1]?.chords[0]?.chord;
  if (home === undefined || more !== undefined || coming === undefined) return null;
  return home.chord.root === chart.key && (coming.root - chart.key + 12) % 12 === 7 ? bar : null;
};
