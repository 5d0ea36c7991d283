import type { Section } from '../../core/arranger/program';
import type { Bar } from '../../core/chart/chart';
import { elementAt } from '../../core/theory/element-at';
import { secondsAt, type TempoMap, tempoMapOf, ticksAt } from './tempo-map';

/** A section set on the audio clock. All times are seconds of the audio context. */
export interface Placement {
  readonly section: Section;
  readonly tempo: TempoMap;
  /** Time of tick 0; lies before `from` when the section was entered in its middle. */
  readonly startsAt: number;
  /** The stretch of time in which this section is what one hears. */
  readonly from: number;
  readonly until: number;
  /** False once a later placement took over: nothing more of it is to be scheduled. */
  readonly open: boolean;
}

/** Sections in the order they are heard; consecutive stretches touch. */
export type Timeline = readonly Placement[];

/** Sets a section on the clock so that its tick `ticks` falls on `at`. */
export const placeSection = (section: Section, at: number, ticks = 0): Placement => {
  const tempo = tempoMapOf(section);
  const startsAt = at - secondsAt(tempo, ticks);
  return {
    section,
    tempo,
    startsAt,
    from: at,
    until: startsAt + secondsAt(tempo, section.score.length),
    open: true,
  };
};

/** Time at which a tick of a placed section sounds. */
export const timeOfTick = (placement: Placement, ticks: number): number =>
  placement.startsAt + secondsAt(placement.tempo, ticks);

/** Tick of a placed section that sounds at a time; fractional. */
export const tickAtTime = (placement: Placement, time: number): number =>
  ticksAt(placement.tempo, time - placement.startsAt);

/** The placement heard at a time, or null before, after and between. */
export const placementAt = (timeline: Timeline, time: number): Placement | null =>
  timeline.find(({ from, until }) => from <= time && time < until) ?? null;

/** Ends everything at a time: what lies later is dropped, what sounds then is shortened and closed. */
export const cutTimeline = (timeline: Timeline, at: number): Timeline =>
  timeline
    .filter(({ from }) => from < at)
    .map((placement) =>
      placement.until > at || placement.open
        ? { ...placement, until: Math.min(placement.until, at), open: false }
        : placement,
    );

/** Drops what was heard before a time. */
export const forgetBefore = (timeline: Timeline, time: number): Timeline =>
  timeline.filter(({ until }) => until >= time);

/** Index of the bar that holds a tick, the last bar for ticks beyond. */
export const barIndexAt = (section: Section, ticks: number): number => {
  const { bars } = section.chart;
  let low = 0;
  let high = bars.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (elementAt(bars, middle).at <= ticks) low = middle;
    else high = middle - 1;
  }
  return low;
};

/** The bar that holds a tick, the last bar for ticks beyond. */
export const barAt = (section: Section, ticks: number): Bar =>
  elementAt(section.chart.bars, barIndexAt(section, ticks));

/** Whole beat within a bar that holds a tick, from 0. */
export const beatAt = (section: Section, bar: number, ticks: number): number => {
  const { meter, bars } = section.chart;
  const { at, length } = elementAt(bars, bar);
  const last = Math.max(0, Math.ceil(length / meter.beatTicks) - 1);
  return Math.min(last, Math.max(0, Math.floor((ticks - at) / meter.beatTicks)));
};

/** First beat of the section at or after a tick, in ticks from its start. */
export const nextBeat = (section: Section, ticks: number): number => {
  const bar = barAt(section, ticks);
  const { beatTicks } = section.chart.meter;
  const inBar = Math.ceil((ticks - bar.at) / beatTicks) * beatTicks;
  return bar.at + Math.min(inBar, bar.length);
};
