import { bandSection } from '../../src/audio/transport/band-sections';
import type { Program, Section } from '../../src/core/arranger/program';

/** Every section of a program that ends, from the first to the last. */
export const allSections = (program: Program): readonly Section[] => {
  const sections: Section[] = [];
  for (let section = bandSection(program, 0, 0); section !== null; ) {
    sections.push(section);
    section = section.last ? null : bandSection(program, section.index + 1, 0);
  }
  return sections;
};
