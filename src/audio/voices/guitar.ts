import { releaseSeconds } from './envelope';
import { GUITAR_TONE } from './guitar-tone';
import { BASE_VELOCITY } from './levels';
import { createModalVoice } from './modal-voice';
import type { Voice } from './voice';

/** Corner of the tone at velocity 80, Hz, and the velocity steps that double it: read off the measured balances. */
const CORNER = 2050;
const DOUBLING = 24;

/** Power response of a two-pole low-pass. */
const lowPass = (frequency: number, corner: number): number => 1 / (1 + (frequency / corner) ** 4);

/** A softer pick closes a two-pole low-pass; the tone table holds its effect at velocity 80. */
const brightness = (_k: number, frequency: number, velocity: number): number => {
  const corner = CORNER * 2 ** ((velocity - BASE_VELOCITY) / DOUBLING);
  return 10 * Math.log10(lowPass(frequency, corner) / lowPass(frequency, CORNER));
};

/** Semi-hollow guitar through its neck pickup. */
export const guitar: Voice = createModalVoice({
  anchors: GUITAR_TONE,
  beat: 0.3,
  knockLow: 200,
  rustleLow: 80,
  brightness,
  variation: 0.8,
  stroke: [],
  release: (velocity) => releaseSeconds(0.025, velocity),
});
