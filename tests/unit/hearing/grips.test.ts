import { describe, expect, it } from 'vitest';
import { createGripRecogniser } from '../../../src/core/hearing/recognise-grip';
import type { ReedSpectrum } from '../../../src/core/hearing/reed-spectra';
import { measureGrips } from '../../helpers/hearing/grip-figures';

describe('grips', () => {
  /** Reeds of four holes, each with two bins of its own. */
  const spectra: readonly ReedSpectrum[] = (['blow', 'draw'] as const).flatMap((breath, row) =>
    [1, 2, 3, 4].map((hole, i) => {
      const power = new Float64Array(32);
      power[2 + 3 * i + 16 * row] = 0.7;
      power[3 + 3 * i + 16 * row] = 0.3;
      return { hole, breath, power };
    }),
  );
  const together = (...parts: readonly (readonly [reed: number, share: number])[]): Float64Array =>
    new Float64Array(32).map((_, bin) =>
      parts.reduce((sum, [reed, share]) => sum + share * spectra[reed].power[bin], 0),
    );

  it('are one breath and a shape that a mouth can make', () => {
    const recognise = createGripRecogniser(spectra);
    expect(recognise(together([1, 1]))).toMatchObject({ breath: 'blow', holes: [2] });
    expect(recognise(together([4, 1], [5, 0.5], [6, 0.7]))).toMatchObject({
      breath: 'draw',
      holes: [1, 2, 3],
    });
    expect(recognise(together([0, 1], [3, 0.6]))).toMatchObject({ breath: 'blow', holes: [1, 4] });
    // Both breaths at once cannot be: the louder side is taken, and what is left is told.
    const mixed = recognise(together([0, 1], [1, 1], [6, 0.8]));
    expect(mixed).toMatchObject({ breath: 'blow', holes: [1, 2] });
    expect(mixed?.unexplained).toBeGreaterThan(0.2);
  });

  it('are none in silence, or where no reed is known', () => {
    expect(createGripRecogniser(spectra)(new Float64Array(32))).toBeNull();
    expect(createGripRecogniser([])(together([0, 1]))).toBeNull();
  });

  it('are read exactly in most windows, once the reeds were heard one by one', () => {
    const { grips, exact } = measureGrips([903, 904], { seconds: 5, leak: null });
    expect(grips).toBeGreaterThan(8);
    expect(exact).toBeGreaterThan(0.85);
  });
});
