/**
 * Fifths from the signature of the major key of a tonic to that of its mode, by the mode's first three letters, which
 * ABC (standard 2.1, §3.1.14) and MusicXML (4.0, `mode`) have in common: D dorian is two fifths flatter than D major.
 */
export const MODE_FIFTHS: Readonly<Record<string, number>> = {
  ...{ maj: 0, ion: 0, lyd: 1, mix: -1, dor: -2, min: -3, aeo: -3, phr: -4, loc: -5 },
};

/** Two fifths flatter and more, a mode has a minor third. */
const FLATTEST_MAJOR = -1;

/** Whether a mode, by its first three letters, has a minor third; what is no mode has none. */
export const isMinorMode = (mode: string): boolean => (MODE_FIFTHS[mode] ?? 0) < FLATTEST_MAJOR;
