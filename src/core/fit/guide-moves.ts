import { guideTones } from '../theory/chords';
import type { FitChord, FitSound } from './fit';

/** A step from a guide tone of one chord to the tone of the next it leads to, as the harp plays it. */
export interface GuideMove {
  readonly from: FitSound;
  readonly to: FitSound;
  /** Semitones, 0 for a common tone; negative falls. */
  readonly step: number;
}

/** How a tone is led, in words: `falls to`. @param step semitones. */
export const moveWord = (step: number): string =>
  step === 0 ? 'stays as' : step < 0 ? 'falls to' : 'rises to';

/** A guide tone is led by step: no further than a whole tone. */
const WIDEST_STEP = 2;

interface Ranked extends GuideMove {
  readonly cost: number;
}

/** A new third or seventh tells the change better than a root or fifth does. */
const OTHER_TONE_COST = 1.5;

/**
 * How the third and the seventh of a chord move into the next chord on this harp: for each, the smallest step to a
 * chord tone, thirds and sevenths before roots and fifths, on the easiest pair of sounds in reach. Empty where the
 * harp gives none, or where both chords are the same.
 */
export const guideMoves = (before: FitChord, after: FitChord): readonly GuideMove[] => {
  if (before.chord.symbol === after.chord.symbol) return [];
  const guides = new Set(guideTones(after.chord).map(({ pitchClass }) => pitchClass));
  return guideTones(before.chord).flatMap(({ degree }) => {
    const pairs = before.sounds
      .filter((sound) => sound.degree === degree)
      .flatMap((from) =>
        after.sounds.flatMap((to): readonly Ranked[] => {
          const step = to.pitch - from.pitch;
          if (Math.abs(step) > WIDEST_STEP) return [];
          const tone = after.chord.tones.find((each) => each.degree === to.degree);
          const other = tone !== undefined && guides.has(tone.pitchClass) ? 0 : OTHER_TONE_COST;
          const high = from.register === 'high' ? 1 : 0;
          return [{ from, to, step, cost: Math.abs(step) + other + from.effort + to.effort + high }];
        }),
      )
      .sort((a, b) => a.cost - b.cost);
    const best = pairs[0];
    return best === undefined ? [] : [{ from: best.from, to: best.to, step: best.step }];
  });
};
