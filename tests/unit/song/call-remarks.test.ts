import { describe, expect, it } from 'vitest';
import { buildChart } from '../../../src/core/chart/build-chart';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { RICHTER } from '../../../src/core/harp/tunings';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { callRemarks } from '../../../src/core/song/call-remarks';
import { tradingFor, typedCalls } from '../../../src/core/song/leads';
import { asPitchClass } from '../../../src/core/theory/units';

const HARP = buildHarp({ tuning: RICHTER, key: asPitchClass(0), octave: 0 });
const CHART = buildChart({ form: 'standard', key: asPitchClass(7), meter: '4/4' });

const remarksOn = (calls: string): readonly (readonly string[])[] => {
  const settings = { ...DEFAULT_SETTINGS, trade: { ...DEFAULT_SETTINGS.trade, on: true, calls } };
  return callRemarks(typedCalls(settings, '4/4'), {
    harp: HARP,
    tabStyle: 'signs',
    trading: tradingFor(settings, { chart: CHART, harp: HARP, chorus: 0 }),
  });
};

describe('callRemarks', () => {
  it.each([
    ['a call that fits', '-2:q -3 4 -4', []],
    ['a hole the harp lacks', '-12:q 4', ['The harp in hand does not have -12; it stays silent.']],
    ['bends the harp lacks', "5':q -5'':q", ["The harp in hand does not have 5', -5''; they stay silent."]],
    [
      'a call of four bars',
      '4:w 4 4 4',
      ['It is too long for its line: it ends after 3 bars, so that you have room to answer.'],
    ],
    ['nothing but what is not understood', 'xx', []],
  ])('%s', (_, calls, remarks) => {
    expect(remarksOn(calls)).toEqual([remarks]);
  });

  it('says which call the chorus has no line for, passing over those without notes', () => {
    expect(remarksOn('xx\n4\n-4\n5\n-5')).toEqual([
      [],
      [],
      [],
      [],
      ['The chorus has room for 3 calls; this one is not played.'],
    ]);
  });
});
