import { describe, expect, it } from 'vitest';
import { buildHarp } from '../../../src/core/harp/build-harp';
import { TUNINGS } from '../../../src/core/harp/tunings';
import { asPitchClass } from '../../../src/core/theory/units';
import { createFakeMicrophone } from '../../helpers/fake-microphone';
import { listenToMicrophone, MICROPHONE_BEHAVIOURS } from '../../helpers/microphone-contract';

const harp = buildHarp({ tuning: TUNINGS[0], key: asPitchClass(0), octave: 0 });

describe('the microphone of the tests', () => {
  it.each(MICROPHONE_BEHAVIOURS)('$does', async ({ act, expected }) => {
    const microphone = createFakeMicrophone();
    const told = listenToMicrophone(microphone);
    const ground = { context: {} as AudioContext, output: {} as AudioNode };
    const heard = async () => microphone.hear();
    expect(await act({ microphone, ground, choice: { harp }, heard, told: told })).toEqual(expected);
  });
});
