import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/core/arranger/program';
import { chartOfChorus, keyOfChorus, slotAt, tempoOfChorus } from '../../../src/core/arranger/song-plan';
import { asBpm, asPitchClass } from '../../../src/core/theory/units';
import { testPlan, testProgram } from '../../helpers/test-charts';

const outline = (changes: Partial<Plan>, most = 9): string =>
  Array.from({ length: most }, (_, index) => slotAt(testPlan(changes), index))
    .map((slot) =>
      slot === null ? '-' : `${slot.kind}${slot.chorus}${'last' in slot && slot.last ? '!' : ''}`,
    )
    .join(' ')
    .replace(/( -)+$/, ' -');

const range = { from: 0, to: 3 };

describe('the order of sections', () => {
  it.each<[string, Partial<Plan>, string]>([
    ['endless', {}, 'chorus0 chorus1 chorus2 chorus3 chorus4 chorus5 chorus6 chorus7 chorus8'],
    ['one chorus', { choruses: 1 }, 'chorus0! ending0 -'],
    ['counted in', { choruses: 1, countInBars: 2 }, 'count-in0 chorus0! ending0 -'],
    [
      'with intro',
      { choruses: 2, countInBars: 1, intro: 'drums' },
      'count-in0 intro0 chorus0 chorus1! ending1 -',
    ],
    ['that stops', { choruses: 2, ending: 'stop' }, 'chorus0 chorus1! -'],
    ['a range', { choruses: 2, repeat: range, intro: 'pickup' }, 'chorus0 chorus1! -'],
    [
      'a range counted',
      { choruses: 3, countInBars: 1, repeat: range, countBetween: true },
      'count-in0 chorus0 count-in1 chorus1 count-in2 chorus2! -',
    ],
    ['counting between needs a range', { choruses: 2, countBetween: true }, 'chorus0 chorus1! ending1 -'],
  ])('%s', (_, plan, expected) => {
    expect(outline(plan)).toBe(expected);
  });

  it.each([
    [-1, 'Section index must be a whole number of at least 0, got -1'],
    [0.5, 'Section index must be a whole number of at least 0, got 0.5'],
  ])('refuses index %s', (index, message) => {
    expect(() => slotAt(testPlan(), index)).toThrow(message);
  });

  it('refuses a song of no choruses', () => {
    expect(() => slotAt(testPlan({ choruses: 0 }), 0)).toThrow(
      'Number of choruses must be a whole number of at least 1, got 0',
    );
  });
});

describe('the tempo of each chorus', () => {
  const tempi = (tempo: Plan['tempo'], target = 100) =>
    [0, 1, 2, 3, 4, 5].map((chorus) =>
      tempoOfChorus(testProgram('shuffle', { tempo: target, plan: { tempo } }), chorus),
    );

  it.each<[string, Plan['tempo'], number[]]>([
    ['fixed', { kind: 'fixed' }, [100, 100, 100, 100, 100, 100]],
    ['up every chorus', { kind: 'ramp', from: asBpm(80), step: 6, every: 1 }, [80, 86, 92, 98, 100, 100]],
    ['up every second', { kind: 'ramp', from: asBpm(80), step: 15, every: 2 }, [80, 80, 95, 95, 100, 100]],
    [
      'down to the target',
      { kind: 'ramp', from: asBpm(120), step: 8, every: 1 },
      [120, 112, 104, 100, 100, 100],
    ],
    [
      'a step written as negative',
      { kind: 'ramp', from: asBpm(120), step: -8, every: 1 },
      [120, 112, 104, 100, 100, 100],
    ],
    ['no step', { kind: 'ramp', from: asBpm(90), step: 0, every: 1 }, [90, 90, 90, 90, 90, 90]],
    ['alternate', { kind: 'alternate', slow: asBpm(70) }, [70, 100, 70, 100, 70, 100]],
  ])('%s', (_, tempo, expected) => {
    expect(tempi(tempo)).toEqual(expected);
  });

  it('refuses a ramp that steps every 0 choruses', () => {
    expect(() => tempi({ kind: 'ramp', from: asBpm(80), step: 5, every: 0 })).toThrow('got 0');
  });
});

describe('the key of each chorus', () => {
  const { chart } = testProgram('shuffle');
  const list = [asPitchClass(7), asPitchClass(0), asPitchClass(10)];

  it.each<[string, Plan['keys'], number[]]>([
    ['same', { kind: 'same' }, [7, 7, 7, 7]],
    ['fourths', { kind: 'fourths' }, [7, 0, 5, 10]],
    ['list, round again', { kind: 'list', keys: list }, [7, 0, 10, 7]],
    ['an empty list keeps the key', { kind: 'list', keys: [] }, [7, 7, 7, 7]],
  ])('%s', (_, keys, expected) => {
    expect([0, 1, 2, 3].map((chorus) => keyOfChorus(chart, testPlan({ keys }), chorus))).toEqual(expected);
  });

  it('spells the chart in it, and comes back to the start after twelve fourths', () => {
    const program = testProgram('shuffle', { plan: { keys: { kind: 'fourths' } } });
    expect(chartOfChorus(program, 3).tonic).toBe('Bb');
    expect(chartOfChorus(program, 3).bars[4]?.chords[0]?.chord.symbol).toBe('Eb7');
    expect(chartOfChorus(program, 12)).toEqual(chart);
  });
});
