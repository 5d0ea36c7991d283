/** How long a take lasts: `1 min 5 s`. */
export const timeText = (seconds: number): string => {
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
};

/** How much room it takes: `2.4 MB`. */
export const sizeText = (bytes: number): string => `${(bytes / 1e6).toFixed(bytes < 1e7 ? 1 : 0)} MB`;
