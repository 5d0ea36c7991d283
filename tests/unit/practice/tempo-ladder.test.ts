import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FADES, fadeAfter, hiddenTone } from '../../../src/core/practice/fading';
import {
  type ChorusOutcome,
  climb,
  type LadderChoice,
  type LadderPlace,
  ladderWords,
} from '../../../src/core/practice/tempo-ladder';
import { soakRuns } from '../../helpers/soak';

const LEAST = 40;
const CLEAN: LadderChoice = { by: 'clean', step: 4, every: 1, top: 104 };
const COUNT: LadderChoice = { by: 'count', step: 6, every: 3, top: 120 };

const tempos = (choice: LadderChoice, outcomes: readonly ChorusOutcome[], tempo = 96) => {
  let place: LadderPlace = { tempo, since: 0 };
  return outcomes.map((outcome) => {
    place = climb(choice, place, outcome, LEAST);
    return place.tempo;
  });
};

describe('the tempo ladder', () => {
  it('rises after a clean chorus up to its top, and stays after a fair one or one that nobody judged', () => {
    expect(tempos(CLEAN, ['clean', 'fair', null, 'clean', 'clean'])).toEqual([100, 100, 100, 104, 104]);
  });

  it('rises after so many choruses, and counts anew from there', () => {
    expect(tempos(COUNT, [null, null, null, null, null, 'fair'])).toEqual([96, 96, 102, 102, 102, 108]);
  });

  it('goes half a step back after trouble, and counts anew', () => {
    expect(tempos(CLEAN, ['clean', 'trouble', 'trouble', 'clean'])).toEqual([100, 98, 96, 100]);
    expect(tempos(COUNT, [null, null, 'trouble', null, null, null])).toEqual([96, 96, 93, 93, 93, 99]);
  });

  it('never leaves its bounds, and never slows down a song that is above its top', () => {
    const outcome = fc.constantFrom<ChorusOutcome>('clean', 'fair', 'trouble', null);
    const choice = fc.record({
      by: fc.constantFrom<LadderChoice['by']>('off', 'clean', 'count'),
      step: fc.integer({ min: 1, max: 20 }),
      every: fc.integer({ min: 1, max: 12 }),
      top: fc.integer({ min: 40, max: 280 }),
    });
    fc.assert(
      fc.property(
        choice,
        fc.array(outcome, { maxLength: 40 }),
        fc.integer({ min: 40, max: 280 }),
        (c, all, t) => {
          const path = tempos(c, all, t);
          for (const tempo of path) {
            expect(tempo).toBeGreaterThanOrEqual(LEAST);
            expect(tempo).toBeLessThanOrEqual(Math.max(c.top, t));
          }
          if (!all.includes('trouble')) expect(path).toEqual(path.toSorted((a, b) => a - b));
          if (c.by === 'off') expect(new Set(path).size).toBeLessThanOrEqual(1);
        },
      ),
      { numRuns: soakRuns(30) },
    );
  });

  it('says what lets it rise', () => {
    expect(ladderWords(CLEAN, { tempo: 96, since: 0 })).toBe('100 after a clean chorus');
    expect(ladderWords(COUNT, { tempo: 96, since: 1 })).toBe('102 after 2 more choruses');
    expect(ladderWords(COUNT, { tempo: 96, since: 2 })).toBe('102 after this chorus');
    expect(ladderWords(CLEAN, { tempo: 104, since: 0 })).toBe('the top of the ladder');
  });
});

describe('what fades', () => {
  it('goes on chorus by chorus to the end, and comes back a little after trouble', () => {
    const path = [null, 'clean', 'trouble', null, 'fair', null] as const;
    let fade = FADES[0] as (typeof FADES)[number];
    expect(
      path.map((outcome) => {
        fade = fadeAfter(fade, outcome);
        return fade;
      }),
    ).toEqual(['one tone', 'all tones', 'one tone', 'all tones', 'the name too', 'the name too']);
    expect(fadeAfter('nothing', 'trouble')).toBe('nothing');
  });

  it('hides every tone some time, by chance that can be repeated', () => {
    const tones = Array.from({ length: 24 }, (_, chorus) => hiddenTone(7, chorus));
    expect(new Set(tones)).toEqual(new Set([0, 1, 2]));
    expect(tones).toEqual(Array.from({ length: 24 }, (_, chorus) => hiddenTone(7, chorus)));
  });
});
