import { tilted } from '../synthesis/brightness';
import { releaseSeconds } from '../synthesis/envelope';
import { createModalVoice } from '../synthesis/modal-voice';
import type { Voice } from '../synthesis/voice';
import { PIANO_TONE } from './piano-tone';

/** Piano: stiff strings in unisons that fall fast together and ring on slowly apart, behind the felt of a hammer. */
export const piano: Voice = createModalVoice({
  anchors: PIANO_TONE,
  beat: 0.5,
  knockLow: 150,
  rustleLow: 80,
  brightness: tilted(1.2),
  brightnessCounts: false,
  variation: 0.5,
  stroke: [],
  release: (velocity) => releaseSeconds(0.127, velocity),
});
