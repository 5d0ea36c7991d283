import { explained } from '../signal/explained';
import { elementAt } from '../theory/element-at';
import { higherPlaces, MULTIPLES, type PitchGrid, widen } from './pitch-grid';

/** How alike a multiple must be, and how much of the evidence it may lack; tried on generated takes. */
const ALIKE = { likeness: 0.93, lacks: 0.2 } as const;
/** A band denies only pitches of which it holds so many harmonics that are not the multiple's. */
const OWN_HARMONICS = 2;
/** The highest band is looked at up to here. Hz. */
const HIGHEST = 6000;
/** Pitches with so much less evidence than the best need no denial. */
const NEAR_BEST = 2.5;
/** What a pitch that is denied must have besides beyond its multiples, in units of evidence. */
const MORE = 3;
/** Reeds whose third harmonic drowns all others in a band are not rare: that multiple needs both bands. */
const TWELFTH = 3;

/** For every pitch the places of its multiples, −1 where too few of its own harmonics lie in a band beside theirs. */
const denyingPlaces = (grid: PitchGrid, from: number, to: number): Int32Array =>
  higherPlaces(grid).map((place, i) => {
    const hz = elementAt(grid.frequencies, Math.floor(i / MULTIPLES));
    const times = 2 + (i % MULTIPLES);
    let own = 0;
    for (let k = Math.ceil(from / hz); k * hz <= to; k += 1) if (k % times !== 0) own += 1;
    return own < OWN_HARMONICS || place >= grid.frequencies.length ? -1 : place;
  });

/**
 * Finds pitches that a multiple explains as well in a band where they have harmonics of their own: those are not heard
 * there, and what speaks for them in other bands may be what a room keeps of the note before. Tells what is asked of
 * each pitch for that, from the evidence of all and the likenesses in the middle and high bands (`edges`: where these
 * begin, Hz); overwritten by the next call.
 */
export const createDeniedPitches = (grid: PitchGrid, edges: readonly [middle: number, high: number]) => {
  const inMiddle = denyingPlaces(grid, edges[0], edges[1]);
  const inHigh = denyingPlaces(grid, edges[1], HIGHEST);
  const size = grid.frequencies.length;
  const middle = new Float64Array(size + 1);
  const high = new Float64Array(size + 1);
  const more = new Float64Array(size);

  const isDenied = (i: number): boolean => {
    const ownMiddle = explained(middle[i] ?? 0);
    const ownHigh = explained(high[i] ?? 0);
    for (let m = 0; m < MULTIPLES; m += 1) {
      const a = inMiddle[MULTIPLES * i + m] ?? -1;
      const b = inHigh[MULTIPLES * i + m] ?? -1;
      const x = a < 0 ? 0 : (middle[a] ?? 0);
      const y = b < 0 ? 0 : (high[b] ?? 0);
      const byMiddle = x > ALIKE.likeness && ownMiddle - explained(x) < ALIKE.lacks;
      const byHigh = y > ALIKE.likeness && ownHigh - explained(y) < ALIKE.lacks;
      if (m + 2 === TWELFTH ? byMiddle && byHigh : byMiddle || byHigh) return true;
    }
    return false;
  };

  return (values: Float64Array, middleLikeness: Float64Array, highLikeness: Float64Array): Float64Array => {
    widen(middleLikeness, middle);
    widen(highLikeness, high);
    let best = 0;
    for (let i = 0; i < size; i += 1) best = Math.max(best, values[i] ?? 0);
    for (let i = 0; i < size; i += 1)
      more[i] = (values[i] ?? 0) >= best - NEAR_BEST && isDenied(i) ? MORE : 0;
    return more;
  };
};
