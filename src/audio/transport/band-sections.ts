import { programAt } from '../../core/arranger/changing-program';
import type { Program, Section } from '../../core/arranger/program';
import { sectionAt } from '../../core/arranger/section-at';
import { rangeOf, slotAt } from '../../core/arranger/song-plan';

/** First bar of the first chorus to leave out, kept within the form or the repeated range. */
const barsLeftOut = (program: Program, fromBar: number): number => {
  const { from, to } = rangeOf(program);
  return Math.min(Math.max(fromBar, from), to) - from;
};

/**
 * A section of a program as the band plays it: the first chorus is entered at bar `fromBar` of the whole chorus
 * (the nearest there is), the others at their beginning. Null after the end.
 */
export const bandSection = (program: Program, index: number, fromBar: number): Section | null => {
  const place = programAt(program, index);
  const slot = slotAt(place.program.plan, place.index);
  const first = slot?.kind === 'chorus' && slot.chorus === 0;
  return sectionAt(program, index, first ? barsLeftOut(place.program, fromBar) : 0);
};
