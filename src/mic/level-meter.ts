import type { HeardLevel } from './microphone';

/** Measures how loud a stream is from one reading to the next. */
export interface LevelMeter {
  push(heard: Float32Array, sent: Float32Array): void;
  read(): HeardLevel;
}

/** Level of silence, dB re full scale. */
const SILENT = -120;

const decibels = (power: number): number => Math.max(SILENT, 10 * Math.log10(power + 1e-30));

const sumOfSquares = (samples: Float32Array): number => {
  let sum = 0;
  for (let i = 0; i < samples.length; i += 1) sum += (samples[i] ?? 0) ** 2;
  return sum;
};

/** A meter at rest. */
export const createLevelMeter = (): LevelMeter => {
  let [peak, heardSum, sentSum, count] = [0, 0, 0, 0];
  return {
    push: (heard, sent) => {
      for (let i = 0; i < heard.length; i += 1) peak = Math.max(peak, Math.abs(heard[i] ?? 0));
      heardSum += sumOfSquares(heard);
      sentSum += sumOfSquares(sent);
      count += heard.length;
    },
    read: () => {
      const level = {
        peak: decibels(peak * peak),
        mean: decibels(heardSum / Math.max(1, count)),
        sent: decibels(sentSum / Math.max(1, count)),
      };
      [peak, heardSum, sentSum, count] = [0, 0, 0, 0];
      return level;
    },
  };
};
