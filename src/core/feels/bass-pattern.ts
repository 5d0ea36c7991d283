/**
 * A bass line: `walk` and `two` are made note by note (`players/walking.ts`); a riff is a pattern in four-beat bars
 * (`|` bar line, blanks between beats, one mark a step): R root, 3 5 6 7 chord steps as the chord has them, 8 octave,
 * b the fifth below, ^ the last note an octave away, m the half step below the third, A approach to the next root,
 * a the note before it, - hold, . rest.
 */
export type BassPattern = 'walk' | 'two' | { readonly riff: string };

/** Riffs from their texts. */
export const riffs = (...texts: readonly string[]): readonly BassPattern[] => texts.map((riff) => ({ riff }));

/** Ways of any feel from home up to the five chord in the bar before it (common practice, no source). */
export const TURNAROUND_RIFFS: readonly string[] = ['R m 3 A', 'R 3 5 A', 'R 8 5 A'];
