/** Semitones of the plain letters above C. */
export const LETTER_STEPS: Readonly<Record<string, number>> = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** The letters in the order in which sharps are added to a signature; flats come the other way round. */
export const SHARPS_IN_ORDER = 'FCGDAEB';
