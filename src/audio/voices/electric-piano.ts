import { tilted } from '../synthesis/brightness';
import { releaseSeconds } from '../synthesis/envelope';
import { createModalVoice } from '../synthesis/modal-voice';
import type { Voice } from '../synthesis/voice';
import { ELECTRIC_PIANO_TONE } from './electric-piano-tone';

/**
 * Electric piano: a struck tine beside its tone bar. The tine is a bar clamped at one end, and its second and third
 * modes are heard as the bell in front of the note.
 * Source of the mode ratios: Euler–Bernoulli beam, clamped and free: (4.694 / 1.875)² and (7.855 / 1.875)².
 */
export const electricPiano: Voice = createModalVoice({
  anchors: ELECTRIC_PIANO_TONE,
  beat: 0,
  knockLow: 300,
  rustleLow: 100,
  brightness: tilted(2),
  brightnessCounts: false,
  variation: 0.5,
  stroke: [
    { ratio: 6.267, level: -40, perHardness: 6, t60: 0.5 },
    { ratio: 17.55, level: -46, perHardness: 8, t60: 0.15 },
  ],
  release: (velocity) => releaseSeconds(0.021, velocity),
});
