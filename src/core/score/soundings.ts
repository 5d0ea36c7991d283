/** How much of the band sounds. */
export const SOUNDINGS = ['band', 'drums', 'bass', 'click'] as const;
