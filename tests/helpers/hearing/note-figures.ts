/** Figures of many takes together, as the tables of the benchmarks show them. */
import { soundId } from '../../../src/core/harp/tab';
import { makeTake } from './corpus';
import { hearTake } from './hear-take';
import type { LineKind } from './lines';
import { noteScore } from './scores';

export interface NoteFigures {
  readonly kind: LineKind;
  readonly leak: number | null;
  readonly played: number;
  readonly precision: number;
  readonly recall: number;
  readonly f: number;
  /** Median distance of the pitch of found notes, cents; and of those reached by a bend or scoop. */
  readonly cents: number;
  readonly centsAfterGlide: number;
  /** Median of how late onsets are, and of their distance from it, ms. */
  readonly late: number;
  readonly spread: number;
  /** Share of found notes whose sound is the one played, and whose sound is it or among the alternatives. */
  readonly placed: number;
  readonly offered: number;
}

export interface Measuring {
  readonly kind: LineKind;
  readonly leak: number | null;
  readonly seeds: readonly number[];
  readonly seconds: number;
  /** Path of a sound set whose harmonica plays instead of our reed model. */
  readonly set?: string;
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN;

/** Measures takes of one kind; failed overbends are no notes and are left out. */
export const measureNotes = ({ kind, leak, seeds, seconds, set }: Measuring): NoteFigures => {
  const counts = { played: 0, heard: 0, found: 0, placed: 0, offered: 0 };
  const off: { readonly cents: number; readonly glided: boolean }[] = [];
  const late: number[] = [];
  for (const seed of seeds) {
    const take = makeTake({ seed, kind, seconds, leak, ...(set === undefined ? {} : { set }) });
    const { ended } = hearTake(take);
    const { pairs } = noteScore(take.notes, ended);
    counts.played += take.notes.length;
    counts.heard += ended.length;
    counts.found += pairs.length;
    for (const [i, j] of pairs) {
      const [played, heard] = [take.notes[i], ended[j]];
      const id = soundId(played.sounds[0]);
      const chosen = heard.sound !== null && soundId(heard.sound) === id;
      if (chosen) counts.placed += 1;
      if (chosen || heard.alternatives.some((each) => soundId(each) === id)) counts.offered += 1;
      off.push({ cents: Math.abs(1200 * Math.log2(heard.hz / played.hz)), glided: played.scoop !== 0 });
      late.push(1000 * (heard.from - played.from));
    }
  }
  const middle = median(late);
  const precision = counts.found / counts.heard;
  const recall = counts.found / counts.played;
  return {
    kind,
    leak,
    played: counts.played,
    precision,
    recall,
    f: (2 * precision * recall) / (precision + recall),
    cents: median(off.map(({ cents }) => cents)),
    centsAfterGlide: median(off.flatMap(({ cents, glided }) => (glided ? [cents] : []))),
    late: middle,
    spread: median(late.map((each) => Math.abs(each - middle))),
    placed: counts.placed / counts.found,
    offered: counts.offered / counts.found,
  };
};

/** Head of the table. */
export const NOTE_FIGURES_HEAD =
  'played    band   notes     F %     P %     R %  cents  (glide)  late ms  ± ms  place %  offered %';

/** A line of the table. */
export const noteFiguresLine = (figures: NoteFigures): string => {
  const percent = (value: number): string => (100 * value).toFixed(1).padStart(7);
  const { kind, leak, played, cents, centsAfterGlide, late, spread } = figures;
  return [
    kind.padEnd(8),
    (leak === null ? 'none' : `${leak} dB`).padStart(6),
    String(played).padStart(7),
    percent(figures.f),
    percent(figures.precision),
    percent(figures.recall),
    cents.toFixed(1).padStart(6),
    centsAfterGlide.toFixed(1).padStart(8),
    late.toFixed(1).padStart(8),
    spread.toFixed(1).padStart(5),
    percent(figures.placed).padStart(8),
    percent(figures.offered).padStart(10),
  ].join(' ');
};
