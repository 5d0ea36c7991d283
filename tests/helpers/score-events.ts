import type { Program, Section } from '../../src/core/arranger/program';
import { sectionAt } from '../../src/core/arranger/section-at';
import type { NoteEvent, PartId } from '../../src/core/score/score';

/** The section at an index, which must exist. */
export const sectionOf = (program: Program, index: number, fromBar = 0): Section => {
  const section = sectionAt(program, index, fromBar);
  if (section === null) throw new Error(`No section ${index}`);
  return section;
};

/** All sections up to the end, at most `most`. */
export const sectionsOf = (program: Program, most = 12): readonly Section[] => {
  const sections: Section[] = [];
  for (let index = 0; index < most; index += 1) {
    const section = sectionAt(program, index);
    if (section === null) break;
    sections.push(section);
  }
  return sections;
};

export const partOf = (section: Section, part: PartId): readonly NoteEvent[] =>
  section.score.events.filter((event) => event.part === part);

/** Events that start in a bar, `at` counted from the bar's start. */
export const inBar = (section: Section, bar: number, part: PartId): readonly NoteEvent[] => {
  const from = section.chart.bars[bar];
  if (from === undefined) throw new Error(`No bar ${bar}`);
  return partOf(section, part)
    .filter((event) => event.at >= from.at && event.at < from.at + from.length)
    .map((event) => ({ ...event, at: (event.at - from.at) as NoteEvent['at'] }));
};
