/** True where the player asked the system for less motion: what moves by itself then stands still, or jumps. */
export const isStill = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;
