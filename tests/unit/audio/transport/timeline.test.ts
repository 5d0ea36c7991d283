import { describe, expect, it } from 'vitest';
import { bandSection } from '../../../../src/audio/transport/band-sections';
import {
  barIndexAt,
  beatAt,
  cutTimeline,
  nextBeat,
  placementAt,
  placeSection,
} from '../../../../src/audio/transport/timeline';
import type { Section } from '../../../../src/core/arranger/program';
import { plainProgram, plainSections } from '../../../helpers/plain-sections';
import { testProgram } from '../../../helpers/test-charts';

const must = (section: Section | null): Section => {
  if (section === null) throw new Error('the program has this section');
  return section;
};
const simple = must(plainSections(plainProgram(4, 120), 1, 0));
const compound = must(bandSection(testProgram('slow-12-8'), 0, 0));

describe('bars and beats', () => {
  it.each([
    ['the first tick', simple, 0, 0, 0],
    ['the last tick of a bar', simple, 1919, 0, 3],
    ['a bar line', simple, 1920, 1, 0],
    ['a tick beyond the end', simple, 9000, 3, 3],
    ['the third dotted quarter', compound, 1440, 0, 2],
    ['a bar line in 12/8', compound, 2880, 1, 0],
  ] as const)('of %s', (_, section, ticks, bar, beat) => {
    expect(barIndexAt(section, ticks)).toBe(bar);
    expect(beatAt(section, bar, ticks)).toBe(beat);
  });

  it.each([
    ['on a beat', simple, 480, 480],
    ['just after a beat', simple, 481, 960],
    ['in the last beat of a bar', simple, 1900, 1920],
    ['in 12/8', compound, 721, 1440],
  ] as const)('the next beat %s', (_, section, ticks, next) => {
    expect(nextBeat(section, ticks)).toBe(next);
  });
});

describe('sections on the clock', () => {
  const [first, second] = [placeSection(simple, 10), placeSection(simple, 18)];

  it('are heard from their start to their end', () => {
    expect(
      [9.99, 10, 17.99, 18, 25.99, 26].map((time) => placementAt([first, second], time)?.from ?? null),
    ).toEqual([null, 10, 10, 18, 18, null]);
  });

  it('entered in the middle began before they were heard', () => {
    expect(placeSection(simple, 10, 1920)).toMatchObject({ startsAt: 8, from: 10, until: 16 });
  });

  it('are shortened and closed by a cut, and dropped after it', () => {
    expect(cutTimeline([first, second], 12)).toEqual([{ ...first, until: 12, open: false }]);
    expect(cutTimeline([first, second], 20)).toEqual([
      { ...first, open: false },
      { ...second, until: 20, open: false },
    ]);
  });
});
