import type { Section } from './program';

/** Where the sound that leaves the loudspeaker now is in the music. */
export interface Playhead {
  readonly section: Section;
  /** Index into `section.chart.bars`. */
  readonly bar: number;
  /** Whole beat within the bar, from 0. */
  readonly beat: number;
  /** Ticks from the section's start, fractional. */
  readonly ticks: number;
}
