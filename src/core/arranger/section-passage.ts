import { playedFeel } from '../feels/played-feels';
import type { Passage } from '../players/passage';
import { turnaroundLine } from '../players/turnaround';
import { type BeatGrid, createGrid } from '../score/grid';
import type { PartId } from '../score/score';
import { swingRatio } from '../score/swing';
import type { Chord } from '../theory/chord';
import { seedFrom } from '../theory/random';
import type { ShapedChart } from './closing';
import type { Program } from './program';
import { type Slot, tempoOfChorus } from './song-plan';

/** Bars shaped to be played, and the chord that follows them. */
export interface Played extends ShapedChart {
  readonly next: Chord | null;
}

/** Bars of a section with all that the players are told of them. */
export const passageOf = (
  program: Program,
  { kind, chorus }: Slot,
  { chart, shapes, next }: Played,
): Passage => {
  const { style } = program;
  const feel = playedFeel(style.feel);
  const seed = seedFrom(style.seed, style.feel, kind, kind === 'chorus' ? chorus : 0);
  const tempo = tempoOfChorus(program, chorus);
  const feltTempo = tempo * (style.time === 'double-time' ? 2 : 1);
  const gridOf = (part: PartId): BeatGrid => {
    const ratio = swingRatio(feel, { swing: style.swing, tempo: feltTempo, part });
    return createGrid(chart.meter, ratio, feel.swungUnit === '16th');
  };
  const grids = {
    drums: gridOf('drums'),
    bass: gridOf('bass'),
    chords: gridOf('chords'),
    second: gridOf('second'),
    lead: gridOf('lead'),
  };
  const harpHome = program.harpHome?.[chart.key] ?? null;
  const firstBar = kind === 'chorus' ? chorus * chart.bars.length : 0;
  const click = { place: program.plan.click, firstBar };
  const turnaround = turnaroundLine(chart);
  return {
    chart,
    shapes,
    next,
    turnaround,
    harpHome,
    harp: program.harp ?? null,
    grid: grids.drums,
    grids,
    tempo,
    click,
    feel,
    style,
    seed,
  };
};
