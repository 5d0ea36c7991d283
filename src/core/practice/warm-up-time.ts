import { barTicks, layChart } from '../chart/build-chart';
import type { Chart, Meter } from '../chart/chart';
import type { NoteEvent } from '../score/score';
import type { Chord } from '../theory/chord';
import { asSeconds, asTicks, type Bpm, type Seconds } from '../theory/units';

/** How long a bar lasts. */
export const barSeconds = ({ beats }: Meter, tempo: Bpm): number => (beats * 60) / tempo;

/** How long a chart lasts, played a number of times. */
export const chartSeconds = (chart: Chart, passes: number, tempo: Bpm): Seconds =>
  asSeconds(passes * chart.bars.length * barSeconds(chart.meter, tempo));

/** How many times something of a length fits in to last at least `least`, but once at any rate. */
export const passesFor = (seconds: number, least: number): number => Math.max(1, Math.ceil(least / seconds));

/** The chart's first lines of four, as many as last no longer than `most` seconds, one at any rate. */
export const openingOf = (chart: Chart, most: number, tempo: Bpm): Chart => {
  const lines = Math.max(1, Math.floor(most / (4 * barSeconds(chart.meter, tempo))));
  const bars = chart.bars.slice(0, 4 * lines);
  return { ...chart, bars, length: asTicks(bars.length * barTicks(chart.meter)) };
};

/** One chord to a bar in the song's key and meter. */
export const heldChords = (song: Chart, title: string, chords: readonly Chord[]): Chart =>
  layChart({
    title,
    mode: song.mode,
    tonic: song.tonic,
    meter: song.meter,
    bars: chords.map((chord) => [chord]),
  });

/** Notes moved in time. */
export const shiftLead = (notes: readonly NoteEvent[], ticks: number): readonly NoteEvent[] =>
  notes.map((note) => ({ ...note, at: asTicks(note.at + ticks) }));
