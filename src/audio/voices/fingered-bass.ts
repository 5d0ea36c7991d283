import { tilted } from '../synthesis/brightness';
import { releaseSeconds } from '../synthesis/envelope';
import { createModalVoice } from '../synthesis/modal-voice';
import type { Voice } from '../synthesis/voice';
import { FINGERED_BASS_TONE } from './fingered-bass-tone';

/** Electric bass played with the fingers: long, even, strong in the second and third partial. */
export const fingeredBass: Voice = createModalVoice({
  anchors: FINGERED_BASS_TONE,
  beat: 0.3,
  knockLow: 200,
  rustleLow: 60,
  brightness: tilted(1.2),
  brightnessCounts: false,
  variation: 0.8,
  stroke: [],
  release: (velocity) => releaseSeconds(0.034, velocity),
});
