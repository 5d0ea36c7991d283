import { useCallback, useEffect, useState } from 'react';
import type { Chord } from '../../core/theory/chord';
import { useSelected, useSession } from './session-context';
import { useFrame } from './use-frame';

/** The chord being heard in the current bar: the first while stopped, then each in its turn. */
export const usePlayingChord = (): Chord => {
  const { live } = useSession();
  const { tune, bar } = useSelected((state) => state.now);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const chords = tune.chart.bars[bar]?.chords ?? [];
  const [index, setIndex] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new bar starts at its first chord
  useEffect(() => setIndex(0), [bar, tune]);
  const follow = useCallback(() => {
    const heard = live.heard();
    if (heard === null || heard.bar !== bar) return;
    const at = chords.findLastIndex((span) => span.at <= heard.ticks);
    setIndex(Math.max(0, at));
  }, [live, bar, chords]);
  useFrame(playing && chords.length > 1, follow);
  const span = chords[Math.min(index, chords.length - 1)];
  if (span === undefined) throw new RangeError(`Bar ${bar} of the chart holds no chord`);
  return span.chord;
};
