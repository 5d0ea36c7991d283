const UNITS: readonly (readonly [bytes: number, unit: string])[] = [
  [1e6, 'MB'],
  [1e3, 'kB'],
];

/** The size of a file as people say it: `2.4 MB`, `31 kB`, `12 bytes`. */
export const sizeText = (bytes: number): string => {
  for (const [step, unit] of UNITS) {
    if (bytes >= step) return `${(bytes / step).toFixed(bytes < 10 * step ? 1 : 0)} ${unit}`;
  }
  return `${bytes} bytes`;
};

/** How long something lasts, in whole seconds: `40 s`, `1 min 5 s`. */
export const timeText = (seconds: number): string => {
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
};

/** How long something lasts, as a clock has it: `3:05`. */
export const clockText = (seconds: number): string => {
  const whole = Math.round(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
};
