import type { FitChord } from '../fit/fit';
import type { ShownBars } from './bar-view';
import type { Tune } from './tune';

/** The change that comes. */
export interface NextChord {
  readonly fit: FitChord;
  /** The music it belongs to: another harp's, where the key moves. */
  readonly tune: Tune;
  /** Ticks from the start of the bar being shown. */
  readonly after: number;
}

interface Ahead {
  readonly tune: Tune;
  readonly bar: number;
}

/** The bars after the one shown, as far as they are known: at rest the form goes round, a section that is heard ends. */
const barsAhead = ({ now, next }: ShownBars): readonly Ahead[] => {
  const { tune, bar, kind } = now;
  const bars = tune.fit.bars.length;
  const rest = Array.from({ length: bars - 1 - bar }, (_, i) => ({ tune, bar: bar + 1 + i }));
  if (kind === 'rest') return [...rest, ...Array.from({ length: bar }, (_, i) => ({ tune, bar: i }))];
  if (rest.length > 0 || next === null) return rest;
  return next.tune.fit.bars.slice(next.bar).map((_, i) => ({ tune: next.tune, bar: next.bar + i }));
};

/**
 * The next chord that is another than the one now, or is played on another harp, from a chord of the bar shown (its
 * index). Null where none is known: the chord stays to the end of what is heard.
 */
export const nextChord = (shown: ShownBars, index: number): NextChord | null => {
  const { tune, bar } = shown.now;
  const here = tune.fit.bars[bar];
  const current = here?.chords[index];
  if (here === undefined || current === undefined) return null;
  const differs = ({ chord }: FitChord): boolean => chord.symbol !== current.chord.symbol;
  const within = here.chords.slice(index + 1).find(differs);
  if (within !== undefined) return { fit: within, tune, after: within.at - here.at };
  let after: number = here.length;
  for (const ahead of barsAhead(shown)) {
    const there = ahead.tune.fit.bars[ahead.bar];
    const otherHarp = ahead.tune.harp.key !== tune.harp.key;
    const found = there?.chords.find((each) => otherHarp || differs(each));
    if (there !== undefined && found !== undefined)
      return { fit: found, tune: ahead.tune, after: after + found.at - there.at };
    after += there?.length ?? 0;
  }
  return null;
};
