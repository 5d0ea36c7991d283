import type { Plan, Program } from './program';
import { slotAt } from './song-plan';

/** Index of the first section that belongs to a chorus, the count before it included; null where there is none. */
const indexOfChorus = (plan: Plan, chorus: number): number | null => {
  const opening = (plan.countInBars > 0 ? 1 : 0) + (plan.intro !== 'none' && plan.repeat === null ? 1 : 0);
  for (let index = opening; ; index += 1) {
    const slot = slotAt(plan, index);
    if (slot === null || slot.kind === 'ending') return null;
    if (slot.chorus >= chorus) return index;
  }
};

/** A section's place in the program that plays it. */
export interface ProgramPlace {
  readonly program: Program;
  readonly index: number;
}

/** The program that plays a chorus: this one, or the one it turns into. */
export const programOfChorus = (program: Program, chorus: number): Program => {
  const { later } = program;
  if (later === undefined || chorus < later.from) return program;
  const turns = [program, later.program].every(({ plan }) => indexOfChorus(plan, later.from) !== null);
  return turns ? later.program : program;
};

/** Where a section of a program that turns into another one stands: in this one, or from some chorus on in the other. */
export const programAt = (program: Program, index: number): ProgramPlace => {
  const { later } = program;
  if (later === undefined) return { program, index };
  const first = indexOfChorus(program.plan, later.from);
  const there = indexOfChorus(later.program.plan, later.from);
  if (first === null || there === null || index < first) return { program, index };
  return { program: later.program, index: there + index - first };
};
