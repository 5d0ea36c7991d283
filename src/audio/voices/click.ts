import { kitVoice } from '../drums/drum-keys';
import { WOOD_BLOCK_HIGH, WOOD_BLOCK_LOW } from '../drums/drum-wood';
import type { Voice } from '../synthesis/voice';

/**
 * The metronome: a wood block, clear but without the highs that tire. Key 76 (high wood block) is the accent, 77 (low)
 * the plain beat; keys below 76 sound as 76, keys above 77 as 77.
 */
export const click: Voice = kitVoice(
  new Map([
    [76, WOOD_BLOCK_HIGH],
    [77, WOOD_BLOCK_LOW],
  ]),
);
