import { describe, expect, it } from 'vitest';
import { createCurveReader, READING_MARGIN, valueAt } from '../../../src/core/signal/curve-reader';

/** A curve that is known between its values: even about 0, as likenesses are, and far below half the rate. */
const curveAt = (lag: number): number => Math.cos(0.31 * lag + 1e-9) + 0.4 * Math.cos(0.67 * lag);
const curve = Float64Array.from({ length: 80 }, (_, lag) => curveAt(lag));

describe('a curve read between whole lags', () => {
  const lags = Float64Array.from({ length: 900 }, (_, i) => 60 - i / 15.01);

  it('is what it is there', () => {
    for (const lag of lags.filter((each) => each > READING_MARGIN))
      expect(Math.abs(valueAt(curve, lag) - curveAt(lag))).toBeLessThan(0.01);
  });

  it('is the same at one lag as at many, and at a whole lag what it is', () => {
    const values = new Float64Array(lags.length);
    createCurveReader(lags).read(curve, values);
    lags.forEach((lag, i) => {
      expect(valueAt(curve, lag)).toBeCloseTo(values[i] ?? Number.NaN, 12);
    });
    for (const off of [0, 1e-12, -1e-12, 1e-7, -1e-7])
      expect(valueAt(curve, 20 + off)).toBeCloseTo(curve[20] ?? Number.NaN, 6);
  });
});
