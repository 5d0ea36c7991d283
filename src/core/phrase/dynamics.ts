/** How loud notes are, softest first, in the words of the trade (Open Music Theory, "Other Rhythmic Essentials", on dynamics). */
export const DYNAMICS = ['pp', 'p', 'mp', 'mf', 'f', 'ff'] as const;
export type Dynamic = (typeof DYNAMICS)[number];

/** What notes without a word are. */
export const USUAL_DYNAMIC = 'mf';

/** Whether a word of a phrase, or a value from outside, is one of `DYNAMICS`. */
export const isDynamic = (value: unknown): value is Dynamic => DYNAMICS.some((each) => each === value);

/** Steps of MIDI velocity from one dynamic to the next, and of an accent: an even ladder (common practice, no source). */
const STEP = 13;

/** What a note's velocity changes by against an unmarked one, from −39 to +39. */
export const velocityBy = (dynamic: Dynamic | undefined, accented: boolean): number =>
  STEP * (DYNAMICS.indexOf(dynamic ?? USUAL_DYNAMIC) - DYNAMICS.indexOf(USUAL_DYNAMIC)) +
  (accented ? STEP : 0);
