import type { BarKey, Chart } from '../chart/chart';
import type { Chord } from '../theory/chord';
import { type KeyMode, keyName, PITCH_CLASSES } from '../theory/pitch';
import { asPitchClass, type PitchClass } from '../theory/units';

/** What speaks for a key (weights by design, tried on every built-in form in `guess-key.test.ts`). */
const WEIGHT = { tonic: 3, first: 1.5, last: 1, scale: 1, cadence: 1 } as const;
/** Steps whose chords belong to a key, those that blues and modes lend it too. */
const STEPS: Readonly<Record<KeyMode, ReadonlySet<number>>> = {
  major: new Set([0, 2, 3, 4, 5, 7, 9, 10]),
  minor: new Set([0, 2, 3, 5, 7, 8, 10]),
};
/** A key is named only where so much speaks for it, and so much more than for the next. */
const ENOUGH = 3;
const CLEAR = 0.4;
/** Fewer chords than these say nothing of a key. */
const FEWEST_CHORDS = 3;

const isOf = (chord: Chord, mode: KeyMode): boolean => {
  const has = (degree: string): boolean => chord.tones.some((tone) => tone.degree === degree);
  return mode === 'minor' ? has('b3') && !has('3') : !has('b3') || has('3');
};

const share = (parts: readonly boolean[]): number => parts.filter(Boolean).length / Math.max(1, parts.length);

const scoreOf = (
  chords: readonly Chord[],
  beats: readonly number[],
  tonic: PitchClass,
  mode: KeyMode,
): number => {
  const isTonic = (chord: Chord | undefined): boolean => chord?.root === tonic && isOf(chord, mode);
  const isDominant = (chord: Chord | undefined): boolean =>
    chord?.root === asPitchClass(tonic + 7) && isOf(chord, 'major');
  const whole = beats.reduce((sum, each) => sum + each, 0);
  const home = beats.reduce((sum, each, i) => sum + (isTonic(chords[i]) ? each : 0), 0);
  const last = chords.at(-1);
  return (
    (WEIGHT.tonic * home) / whole +
    WEIGHT.first * Number(isTonic(chords[0])) +
    WEIGHT.last * Number(isTonic(last) || isDominant(last)) +
    WEIGHT.scale * share(chords.map(({ root }) => STEPS[mode].has(asPitchClass(root - tonic)))) +
    WEIGHT.cadence * share(chords.map((chord, i) => isDominant(chord) && isTonic(chords[i + 1])))
  );
};

/**
 * The key that the chords of a chart speak for; null where they are few, or speak for several alike. It is spelled as
 * the key is usually written. Sections in keys of their own are judged with the rest.
 */
export const guessKey = ({ bars }: Chart): BarKey | null => {
  const spans = bars.flatMap(({ chords }) => chords.filter(({ band }) => band !== 'rest'));
  const chords = spans.map(({ chord }) => chord);
  if (new Set(chords.map(({ symbol }) => symbol)).size < FEWEST_CHORDS) return null;
  const beats = spans.map(({ length }) => length);
  const guesses = (['major', 'minor'] as const)
    .flatMap((mode) => PITCH_CLASSES.map((key) => ({ key, mode, score: scoreOf(chords, beats, key, mode) })))
    .sort((a, b) => b.score - a.score);
  const [best, next] = guesses;
  if (best === undefined || next === undefined || best.score < ENOUGH || best.score - next.score < CLEAR)
    return null;
  return { tonic: keyName(best.key, best.mode), mode: best.mode };
};
