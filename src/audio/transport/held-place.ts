/** The place a paused band goes on from. Nothing sounds then, so it is worked out without a clock. */
import type { Playhead } from '../../core/arranger/playhead';
import type { Program, Section } from '../../core/arranger/program';
import { elementAt } from '../../core/theory/element-at';
import {
  barIndexOfNumber,
  chorusWith,
  formPositionAt,
  type SectionSource,
  sectionInPlaceOf,
} from './form-position';

/** A program paused in the middle of it. */
export interface HeldPlace {
  readonly program: Program;
  /** The bar of the form at which the first chorus is entered. */
  readonly fromBar: number;
  /** The beginning of the bar that was heard. */
  readonly playhead: Playhead;
}

const barStart = (section: Section, bar: number): Playhead => ({
  section,
  bar,
  beat: 0,
  ticks: elementAt(section.chart.bars, bar).at,
});

/** The start of the bar a playhead is in, with the program it belongs to. */
export const holdBar = (program: Program, fromBar: number, { section, bar }: Playhead): HeldPlace => ({
  program,
  fromBar,
  playhead: barStart(section, bar),
});

/** The same place in a changed program; where that is over sooner, the old bar is held. */
export const heldInstead = (source: SectionSource, held: HeldPlace, program: Program): HeldPlace => {
  const { section: old, ticks } = held.playhead;
  const place = formPositionAt(old, ticks);
  const section = sectionInPlaceOf(source, program, { section: old, number: place.number }, held.fromBar);
  if (section === null) return { ...held, program };
  const bar =
    place.number === null
      ? Math.min(place.index, section.chart.bars.length - 1)
      : Math.max(0, barIndexOfNumber(section, place.number));
  return { ...held, program, playhead: barStart(section, bar) };
};

/** Another bar of the chorus; in a count-in or intro, the bar at which the first chorus is entered. */
export const heldAtBar = (source: SectionSource, held: HeldPlace, bar: number): HeldPlace => {
  const { section: old } = held.playhead;
  if (old.kind === 'count-in' || old.kind === 'intro') return { ...held, fromBar: bar };
  const section = chorusWith(source, held.program, { bar, from: old, fromBar: held.fromBar });
  if (section === null) return held;
  return { ...held, playhead: barStart(section, Math.max(0, barIndexOfNumber(section, bar))) };
};

/** The section after the held one; null where the music would end. */
export const heldUpcoming = (
  source: SectionSource,
  { program, fromBar, playhead: { section } }: HeldPlace,
): Section | null => (section.last ? null : source(program, section.index + 1, fromBar));
