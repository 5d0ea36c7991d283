import { releaseSeconds } from '../synthesis/envelope';
import { BASE_VELOCITY } from '../synthesis/levels';
import { createModalVoice } from '../synthesis/modal-voice';
import type { Voice } from '../synthesis/voice';
import { GUITAR_TONE } from './guitar-tone';

/** Corner of the tone at velocity 80, Hz, and the velocity steps that double it: read off the measured balances. */
const CORNER = 2050;
const DOUBLING = 24;
/** The pickup and its cable pass no more than this however hard the string is struck, Hz. */
const WIDEST = 5800;

const cornerAt = (velocity: number): number => {
  const open = CORNER * 2 ** ((velocity - BASE_VELOCITY) / DOUBLING);
  return open / (1 + (open / WIDEST) ** 4) ** 0.25;
};

/** Power response of a two-pole low-pass. */
const lowPass = (frequency: number, corner: number): number => 1 / (1 + (frequency / corner) ** 4);

/** A softer pick closes a two-pole low-pass; the tone table holds its effect at velocity 80. */
const brightness = (_k: number, frequency: number, velocity: number): number =>
  10 * Math.log10(lowPass(frequency, cornerAt(velocity)) / lowPass(frequency, cornerAt(BASE_VELOCITY)));

/** Semi-hollow guitar through its neck pickup. */
export const guitar: Voice = createModalVoice({
  anchors: GUITAR_TONE,
  beat: 0.3,
  knockLow: 200,
  rustleLow: 80,
  brightness,
  brightnessCounts: true,
  variation: 0.8,
  stroke: [],
  release: (velocity) => releaseSeconds(0.014, velocity),
});
