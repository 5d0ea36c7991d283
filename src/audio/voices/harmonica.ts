import { releaseSeconds } from '../synthesis/envelope';
import { createFreeReedVoice } from '../synthesis/free-reed';
import type { Voice } from '../synthesis/voice';
import { HARMONICA_TONE } from './harmonica-tone';

/** Harmonica lead: a free reed with breath before and under it, and a throat vibrato that comes in on held notes. */
export const harmonica: Voice = createFreeReedVoice({
  anchors: HARMONICA_TONE,
  settle: 0.22,
  breath: { low: 900, high: 6000 },
  chiff: { low: 1200, high: 6000, t60: 0.12 },
  vibrato: { rate: 5.2, cents: 4, decibels: 0.6, from: 0.5 },
  brightness: 1.2,
  variation: 0.6,
  release: (velocity) => releaseSeconds(0.033, velocity),
});
