import { tilted } from '../synthesis/brightness';
import { releaseSeconds } from '../synthesis/envelope';
import { createModalVoice } from '../synthesis/modal-voice';
import type { Voice } from '../synthesis/voice';
import { UPRIGHT_BASS_TONE } from './upright-bass-tone';

/** Upright bass: a heavy string plucked with the side of the finger, a thump in front, a short wooden sustain. */
export const uprightBass: Voice = createModalVoice({
  anchors: UPRIGHT_BASS_TONE,
  beat: 0.3,
  knockLow: 200,
  rustleLow: 30,
  brightness: tilted(1.2),
  brightnessCounts: false,
  variation: 1,
  stroke: [],
  release: (velocity) => releaseSeconds(0.02, velocity),
});
