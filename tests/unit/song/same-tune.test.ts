import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_SETTINGS } from '../../../src/core/settings/defaults';
import { SETTINGS } from '../../../src/core/settings/settings';
import { chartFor } from '../../../src/core/song/chosen-chart';
import { isSameTune, tuneFor } from '../../../src/core/song/tune';
import { anySettings } from '../../helpers/settings-arbitraries';
import { soakRuns } from '../../helpers/soak';

const NAMES = Object.keys(SETTINGS) as readonly (keyof typeof SETTINGS)[];

describe('isSameTune', () => {
  it('says of no two choices that differ in one thing that their tunes are the same when they are not', () => {
    fc.assert(
      fc.property(anySettings, fc.constantFrom(...NAMES), (other, name) => {
        const changed = { ...DEFAULT_SETTINGS, [name]: other[name] };
        if (!isSameTune(DEFAULT_SETTINGS, changed)) return;
        expect(tuneFor(changed, chartFor(changed, []))).toEqual(
          tuneFor(DEFAULT_SETTINGS, chartFor(DEFAULT_SETTINGS, [])),
        );
      }),
      { numRuns: soakRuns(100) },
    );
  });

  it('knows another take, another mix and another tempo for the same tune, and another key for a new one', () => {
    const { style } = DEFAULT_SETTINGS;
    expect(isSameTune(DEFAULT_SETTINGS, { ...DEFAULT_SETTINGS, style: { ...style, seed: 7 } })).toBe(true);
    expect(isSameTune(DEFAULT_SETTINGS, { ...DEFAULT_SETTINGS, speakerLag: 40 })).toBe(true);
    expect(isSameTune(DEFAULT_SETTINGS, { ...DEFAULT_SETTINGS, position: 3 })).toBe(false);
    expect(
      isSameTune(DEFAULT_SETTINGS, { ...DEFAULT_SETTINGS, style: { ...style, feel: 'slow-12-8' } }),
    ).toBe(false);
  });
});
