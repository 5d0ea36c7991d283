/** How many grips are recognised exactly, once the harp's reeds have been heard one by one. */

import { createGripRecogniser, type HeardGrip } from '../../../src/core/hearing/recognise-grip';
import { learnReedSpectra, SPECTRUM_HOP, SPECTRUM_LOWEST } from '../../../src/core/hearing/reed-spectra';
import { createFrontEnd } from '../../../src/core/signal/front-end';
import { createSlidingSpectrum, SPECTRUM_SAMPLES } from '../../../src/core/signal/sliding-spectrum';
import { makeTake } from './corpus';
import type { TrueNote } from './take';

export interface GripFigures {
  readonly grips: number;
  /** Share of grips and single notes read with exactly their pitches, one window each, at their middle. */
  readonly exact: number;
}

const pitchesOf = (note: TrueNote): string => note.sounds.map(({ pitch }) => pitch).join();

/** Measures takes of grips, on harps that were played note by note before, at the same place. */
export const measureGrips = (
  seeds: readonly number[],
  { seconds, leak }: { readonly seconds: number; readonly leak: number | null },
): GripFigures => {
  let [grips, exact] = [0, 0];
  for (const seed of seeds) {
    const lone = makeTake({ seed, kind: 'naturals', seconds: 13.5, leak: null });
    const reeds = lone.notes.map(({ sounds, from, to }) => ({ sound: sounds[0], from, to }));
    const recognise = createGripRecogniser(learnReedSpectra({ ...lone, reeds }));
    const take = makeTake({ seed, kind: 'grips', seconds, leak });
    const front = createFrontEnd({
      sampleRate: take.sampleRate,
      hop: SPECTRUM_HOP,
      lowest: SPECTRUM_LOWEST,
    });
    const spectrum = createSlidingSpectrum(front.rate);
    const readings: { readonly time: number; readonly grip: HeardGrip | null }[] = [];
    let hops = 0;
    front.push(take.samples, (hop) => {
      spectrum.push(hop);
      hops += 1;
      const time = (hops * SPECTRUM_HOP - SPECTRUM_SAMPLES / 2) / front.rate;
      const near = take.notes.some(({ from, to }) => time > from && time < to);
      if (near) readings.push({ time, grip: recognise(spectrum.power()) });
    });
    for (const note of take.notes) {
      const middle = Math.min((note.from + note.to) / 2 + 0.02, note.to - 0.045);
      const reading = readings.reduce((best, each) =>
        Math.abs(each.time - middle) < Math.abs(best.time - middle) ? each : best,
      );
      const { grip } = reading;
      const heard = grip?.holes
        .map(
          (hole) => take.harp.reeds.find((reed) => reed.hole === hole && reed.breath === grip.breath)?.pitch,
        )
        .join();
      grips += 1;
      if (heard === pitchesOf(note)) exact += 1;
    }
  }
  return { grips, exact: exact / grips };
};
