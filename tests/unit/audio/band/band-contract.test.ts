import { describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../../../src/audio/band/resting-sound';
import { BAND_BEHAVIOURS, listenTo } from '../../../helpers/band-contract';
import { createFakeBand } from '../../../helpers/fake-band';
import { testProgram } from '../../../helpers/test-charts';

const program = testProgram('shuffle', { plan: { countInBars: 1, choruses: null } });

describe('the band without sound', () => {
  it.each(BAND_BEHAVIOURS)('$does', async ({ act, expected }) => {
    const band = createFakeBand();
    const firstBar = async () => band.hear(0, 0);
    const stage = { band, program, sound: RESTING_SOUND, firstBar, told: listenTo(band) };
    expect(await act(stage)).toEqual(expected);
  });
});
