import type { Section } from '../../src/core/arranger/program';
import { buildChart } from '../../src/core/chart/build-chart';
import type { Chart, MeterName } from '../../src/core/chart/chart';
import type { NoteEvent, PartId } from '../../src/core/score/score';
import { asBpm, asMidi, asPitchClass, asTicks } from '../../src/core/theory/units';

/** The standard twelve-bar form in G, or in another key and meter. */
export const twelveBars = (meter: MeterName = '4/4', key = 7): Chart =>
  buildChart({ form: 'standard', key: asPitchClass(key), meter });

/** A note of a score from plain numbers. */
export const scoreNote = (
  part: PartId,
  [at, length, pitch, velocity = 80]: readonly [at: number, length: number, pitch: number, velocity?: number],
  glide?: { readonly from: number; readonly ticks: number },
): NoteEvent => ({
  part,
  at: asTicks(at),
  length: asTicks(length),
  pitch: asMidi(pitch),
  velocity,
  ...(glide ? { glideFrom: glide.from, glideTicks: asTicks(glide.ticks) } : {}),
});

/** One chorus with the given notes. */
export const sectionOf = (
  events: readonly NoteEvent[],
  { chart = twelveBars(), bpm = 120, ...rest }: Partial<Section> & { bpm?: number } = {},
): Section => ({
  index: 0,
  kind: 'chorus',
  chorus: 0,
  chart,
  barNumbers: chart.bars.map((_, index) => index),
  score: { length: chart.length, events },
  tempo: [{ at: asTicks(0), bpm: asBpm(bpm) }],
  last: true,
  ...rest,
});
