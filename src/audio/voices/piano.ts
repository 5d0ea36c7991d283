import { tilted } from '../synthesis/brightness';
import { releaseSeconds } from '../synthesis/envelope';
import { createModalVoice } from '../synthesis/modal-voice';
import type { Voice } from '../synthesis/voice';
import { PIANO_TONE } from './piano-tone';

/** What recordings have over the table of partials, which was read 100 ms after the blow: dB, and the Hz it rises between. */
const BRILLIANCE = { decibels: 3, from: 600, to: 1800 };

const brilliance = (frequency: number): number => {
  const { decibels, from, to } = BRILLIANCE;
  return decibels * Math.min(1, Math.max(0, Math.log(frequency / from) / Math.log(to / from)));
};

const velocityTilt = tilted(1.2);

/** Piano: stiff strings in unisons that fall fast together and ring on slowly apart, behind the felt of a hammer. */
export const piano: Voice = createModalVoice({
  anchors: PIANO_TONE,
  beat: 0.5,
  knockLow: 150,
  rustleLow: 80,
  brightness: (k, frequency, velocity) => velocityTilt(k, frequency, velocity) + brilliance(frequency),
  brightnessCounts: false,
  variation: 0.5,
  stroke: [],
  release: (velocity) => releaseSeconds(0.127, velocity),
});
