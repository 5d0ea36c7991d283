import { describe, expect, it } from 'vitest';
import { RESTING_SOUND } from '../../../../src/audio/band/resting-sound';
import { sectionAt } from '../../../../src/core/arranger/section-at';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';
import { RENDERER_BEHAVIOURS } from '../../../helpers/renderer-contract';
import { testProgram } from '../../../helpers/test-charts';

const section = sectionAt(testProgram('shuffle', { plan: { countInBars: 1 } }), 0);
const request = {
  sections: section === null ? [] : [section],
  feel: 'shuffle',
  push: {},
  sound: RESTING_SOUND,
  sampleRate: 44_100,
} as const;

describe('the renderer that hums', () => {
  it.each(RENDERER_BEHAVIOURS)('$does', async ({ act, expected }) => {
    const render = await createFakeTakeAway().loadRenderer();
    expect(await act(render, request)).toEqual(expected);
  });
});
