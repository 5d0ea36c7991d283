import { programAt } from '../../core/arranger/changing-program';
import type { Program, Section } from '../../core/arranger/program';
import { sectionAt } from '../../core/arranger/section-at';
import { rangeOf, slotAt } from '../../core/arranger/song-plan';
import type { SectionSource } from './form-position';

/** First bar of the first chorus to leave out, kept within the form or the repeated range. */
const barsLeftOut = (program: Program, fromBar: number): number => {
  const { from, to } = rangeOf(program, 0);
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

/** Sections remembered: the one being heard, the next, and those of an opening. */
const REMEMBERED = 4;

/** The same source, which makes each of the last sections of a program once: a start asks for the same ones several times. */
export const rememberSections = (source: SectionSource): SectionSource => {
  let made: { readonly of: Program; readonly sections: Map<string, Section | null> } | null = null;
  return (program, index, fromBar) => {
    if (made?.of !== program) made = { of: program, sections: new Map() };
    const { sections } = made;
    const name = `${index} from ${fromBar}`;
    const known = sections.get(name);
    if (known !== undefined) return known;
    const section = source(program, index, fromBar);
    sections.set(name, section);
    for (const oldest of sections.keys()) if (sections.size > REMEMBERED) sections.delete(oldest);
    return section;
  };
};
