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

/** Every section of a program from the first to the last. Throws RangeError when the program has no end. */
export const allSections = (program: Program, fromBar = 0): readonly Section[] => {
  if (program.plan.choruses === null)
    throw new RangeError('a program without a number of choruses never ends');
  const sections: Section[] = [];
  for (let section = bandSection(program, 0, fromBar); section !== null; ) {
    sections.push(section);
    section = section.last ? null : bandSection(program, section.index + 1, fromBar);
  }
  return sections;
};
