import { expect, it } from 'vitest';
import { bandSection, rememberSections } from '../../../../src/audio/transport/band-sections';
import type { Program } from '../../../../src/core/arranger/program';
import { testProgram } from '../../../helpers/test-charts';

/** A source that notes what it is asked for. */
const counted = () => {
  const asked: string[] = [];
  const source = rememberSections((program: Program, index, fromBar) => {
    asked.push(`${index}/${fromBar}`);
    return bandSection(program, index, fromBar);
  });
  return { asked, source };
};

it('makes a section once, and gives the same as without remembering', () => {
  const { asked, source } = counted();
  const program = testProgram('shuffle');
  expect(source(program, 1, 2)).toBe(source(program, 1, 2));
  expect(source(program, 1, 2)).toEqual(bandSection(program, 1, 2));
  expect(asked).toEqual(['1/2']);
});

it('makes anew what belongs to another program or begins at another bar, and forgets what is long ago', () => {
  const { asked, source } = counted();
  const program = testProgram('shuffle');
  source(program, 0, 0);
  source(program, 0, 3);
  source({ ...program }, 0, 0);
  expect(asked).toEqual(['0/0', '0/3', '0/0']);
  for (const index of [1, 2, 3, 4, 0]) source(program, index, 0);
  expect(asked.slice(3)).toEqual(['1/0', '2/0', '3/0', '4/0', '0/0']);
});
