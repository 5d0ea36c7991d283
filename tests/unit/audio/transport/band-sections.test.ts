import { describe, expect, it } from 'vitest';
import { bandSection } from '../../../../src/audio/transport/band-sections';
import { allSections } from '../../../helpers/all-sections';
import { testProgram } from '../../../helpers/test-charts';

const twelve = testProgram('shuffle', { plan: { countInBars: 1, choruses: 2 } });
const repeated = testProgram('shuffle', { plan: { repeat: { from: 4, to: 7 } } });

describe('sections of the band', () => {
  it.each([
    ['the bar asked for', twelve, 1, 8, 8],
    ['the last bar for one beyond the form', twelve, 1, 40, 11],
    ['the first bar of a later chorus', twelve, 2, 8, 0],
    ['a bar of the repeated range', repeated, 0, 6, 6],
    ['the first of the range for one before it', repeated, 0, 0, 4],
    ['the last of the range for one after it', repeated, 0, 11, 7],
  ] as const)('enter at %s', (_, program, index, fromBar, bar) => {
    expect(bandSection(program, index, fromBar)?.barNumbers[0]).toBe(bar);
  });

  it('are all there from count-in to ending', () => {
    expect(allSections(twelve).map(({ kind }) => kind)).toEqual(['count-in', 'chorus', 'chorus', 'ending']);
  });
});
