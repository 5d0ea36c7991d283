import type { Section } from '../../src/core/arranger/program';
import { type FeelId, feelOf } from '../../src/core/feels/feels';
import { playedFeel } from '../../src/core/feels/played-feels';
import type { NoteEvent, PartId } from '../../src/core/score/score';
import { inBar, partOf, sectionOf } from './score-events';
import { testProgram } from './test-charts';

/** What a feel sounds like in figures, over some choruses. */
export interface ScoreFigures {
  readonly feel: FeelId;
  readonly seed: number;
  /** Events a bar. */
  readonly drums: number;
  readonly bass: number;
  /** Strokes a bar, a chord counting once. */
  readonly chords: number;
  /** Long : short of the drums' off-beats (of the sixteenths where they swing), from the ticks; 1 is even. */
  readonly swing: number | null;
  /** Mean semitones a voice of the chord part moves where the chord changes. */
  readonly movement: number;
  readonly bassSpan: readonly [number, number];
  readonly chordSpan: readonly [number, number];
  /** Share of bars whose chord part is silent. */
  readonly freeBars: number;
  /** Share of bars that equal their neighbour in every part's rhythm and pitch. */
  readonly repeatedBars: number;
}

/** Whether the drums of a feel move in sixteenths: their pairs are half a beat long. */
const movesInSixteenths = (feel: FeelId): boolean =>
  playedFeel(feel).drumming.patterns[1].some((lanes) =>
    Object.values(lanes).some((text) => text.split(' ').some((beat) => beat.length === 4)),
  );

const CHANNELS: readonly PartId[] = ['drums', 'bass', 'chords'];

const strokesOf = (events: readonly NoteEvent[]): ReadonlyMap<number, readonly number[]> => {
  const strokes = new Map<number, number[]>();
  for (const { at, pitch } of events)
    strokes.set(
      at,
      [...(strokes.get(at) ?? []), pitch].sort((a, b) => a - b),
    );
  return strokes;
};

const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;

/**
 * Mean movement of the upper voices, voice by voice from the top, from the last stroke of a chord to the first of the
 * next; a stroke on the last off-beat may be the next chord come early, and is left out.
 */
const movements = (section: Section): readonly number[] => {
  const strokes = [...strokesOf(partOf(section, 'chords'))].filter(([, pitches]) => pitches.length > 2);
  const spans = section.chart.bars.flatMap((bar) => bar.chords);
  return spans.flatMap((span, i) => {
    if (i === 0 || span.chord.symbol === spans[i - 1]?.chord.symbol) return [];
    const early = section.chart.meter.beatTicks * 0.6;
    const before = strokes.findLast(([at]) => at < span.at - early)?.[1];
    const after = strokes.find(([at]) => at >= span.at && at < span.at + span.length)?.[1];
    if (before === undefined || after === undefined) return [];
    const [a, b] = [before.toReversed(), after.toReversed()];
    return [mean(b.slice(0, a.length).map((pitch, voice) => Math.abs(pitch - (a[voice] ?? pitch))))];
  });
};

/** The ratio that the off-beats of the drums keep, from their commonest place between beats (or half beats). */
const swingOf = (sections: readonly Section[], unit: number): number | null => {
  const counts = new Map<number, number>();
  for (const section of sections) {
    for (const { at } of partOf(section, 'drums')) {
      const inside = at % unit;
      if (inside >= unit * 0.45) counts.set(inside, (counts.get(inside) ?? 0) + 1);
    }
  }
  const commonest = [...counts].sort((a, b) => b[1] - a[1])[0]?.[0];
  return commonest === undefined ? null : commonest / (unit - commonest);
};

const fingerprint = (section: Section, bar: number): string =>
  CHANNELS.map((part) =>
    inBar(section, bar, part)
      .map(({ at, pitch }) => `${at}:${pitch}`)
      .join(),
  ).join('|');

/** Measures choruses 0 to `choruses` − 1 of a feel at its usual tempo, breathing through its arc. */
export const measureFeel = (feel: FeelId, seed: number, choruses = 6, leaveRoom = true): ScoreFigures => {
  const program = testProgram(feel, { style: { seed, leaveRoom }, plan: { arc: 'breathe' } });
  const sections = Array.from({ length: choruses }, (_, index) => sectionOf(program, index));
  const bars = sections.reduce((sum, section) => sum + section.chart.bars.length, 0);
  const all = (part: PartId) => sections.flatMap((section) => partOf(section, part));
  const span = (part: PartId): readonly [number, number] => {
    const pitches = all(part).map(({ pitch }) => pitch);
    return [Math.min(...pitches), Math.max(...pitches)];
  };
  const strokes = sections.map((section) => strokesOf(partOf(section, 'chords')).size);
  const barPairs = sections.flatMap((section) =>
    section.chart.bars.slice(1).map((_, bar) => fingerprint(section, bar) === fingerprint(section, bar + 1)),
  );
  const free = sections.flatMap((s) => s.chart.bars.map((_, bar) => inBar(s, bar, 'chords').length === 0));
  const { beatTicks } = program.chart.meter;
  return {
    feel,
    seed,
    drums: all('drums').length / bars,
    bass: all('bass').length / bars,
    chords: strokes.reduce((sum, count) => sum + count, 0) / bars,
    swing: swingOf(sections, movesInSixteenths(feel) ? beatTicks / 2 : beatTicks),
    movement: mean(sections.flatMap(movements)),
    bassSpan: span('bass'),
    chordSpan: span('chords'),
    freeBars: free.filter(Boolean).length / free.length,
    repeatedBars: barPairs.filter(Boolean).length / barPairs.length,
  };
};

/** The figures as one line of a table. */
export const figuresLine = (figures: ScoreFigures): string => {
  const number = (value: number | null, digits: number) => (value === null ? '-' : value.toFixed(digits));
  return [
    feelOf(figures.feel).name.padEnd(22),
    String(figures.seed).padStart(4),
    ...[figures.drums, figures.bass, figures.chords].map((value) => number(value, 1).padStart(7)),
    number(figures.swing, 2).padStart(6),
    number(figures.movement, 2).padStart(6),
    figures.bassSpan.join('-').padStart(7),
    figures.chordSpan.join('-').padStart(7),
    number(figures.freeBars * 100, 0).padStart(5),
    number(figures.repeatedBars * 100, 0).padStart(5),
  ].join(' ');
};

export const FIGURES_HEAD =
  'feel                   seed   drums    bass  chords  swing  moves    bass  chords free%  same%';
