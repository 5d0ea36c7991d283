/**
 * The spectrum of each feel's first chorus, as other players play the same notes: dB in the octaves around 125, 250, 500
 * Hz, 1, 2 and 4 kHz, re all from 63 Hz to 8 kHz together.
 * Source: the MIDI file of one steady chorus (twelve bars with turnaround in G, usual tempo and instruments, seed 1) played
 * by fluidsynth 2 with FluidR3 GM (MIT licence), room and chorus off, bass, chords and drums at the levels the file gives
 * them; the organ of slow-12-8, which that set plays an octave below its keys, was written an octave higher. Power of both
 * sides, by Welch's method in windows of 16384 samples at 48 kHz. Patterns that change much have to be measured again.
 */
import type { FeelId } from '../../src/core/feels/feels';

/** Middles of the octaves, in Hz; a row below has those from 125 to 4000. */
export const MIX_OCTAVES: readonly number[] = [63, 125, 250, 500, 1000, 2000, 4000, 8000];

export const MIX_SPECTRA: Readonly<Record<FeelId, readonly number[]>> = {
  shuffle: [-5.9, -8.2, -14.1, -19.1, -17.9, -19.3],
  'slow-12-8': [-4, -5, -13.1, -19.8, -23.7, -21.6],
  swing: [-5, -10.4, -15.8, -20.8, -18.3, -18.7],
  straight: [-5.9, -3.3, -10.8, -16, -25, -23.2],
  'double-shuffle': [-4.9, -5.9, -11.2, -10.7, -14.8, -20.2],
  jump: [-5.6, -9.5, -12.9, -11.8, -16.4, -19.3],
  boogie: [-5.4, -8, -14.4, -19.6, -17.9, -19.3],
  rhumba: [-4.2, -5.4, -13.5, -17.8, -17.2, -17.6],
  'second-line': [-5.3, -3.7, -11.2, -17.7, -16.6, -18.1],
  train: [-6.2, -15.7, -13.4, -12.3, -17.7, -22.3],
  rock: [-4.2, -7.6, -11.9, -10.4, -14.5, -20.5],
  'minor-slow': [-6, -3.2, -9.5, -16.4, -27.2, -25.6],
  'slow-drag': [-6, -6.9, -12.5, -18.1, -16, -18.6],
  'funk-blues': [-6.4, -6.6, -8.9, -7.4, -11.1, -19],
};
