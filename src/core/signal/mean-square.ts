/** Mean of the squares of samples: their power. */
export const meanSquare = (samples: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < samples.length; i += 1) sum += (samples[i] ?? 0) * (samples[i] ?? 0);
  return sum / samples.length;
};
