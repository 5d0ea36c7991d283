import { useCallback, useEffect, useState } from 'react';
import type { Chord } from '../../core/theory/chord';
import { useSelected, useSession } from './session-context';
import { useFrame } from './use-frame';
import { useHeldFit } from './use-held-fit';

/** Which chord of the current bar is being heard, from 0: the first while stopped, then each in its turn. */
export const usePlayingIndex = (): number => {
  const { live } = useSession();
  const { tune, bar } = useSelected((state) => state.now);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const chords = tune.chart.bars[bar]?.chords ?? [];
  const [index, setIndex] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new bar starts at its first chord
  useEffect(() => setIndex(0), [bar, tune]);
  const follow = useCallback(() => {
    const playhead = live.playhead();
    if (playhead === null || playhead.bar !== bar) return;
    const at = chords.findLastIndex((span) => span.at <= playhead.ticks);
    setIndex(Math.max(0, at));
  }, [live, bar, chords]);
  useFrame(playing && chords.length > 1, follow);
  return Math.max(0, Math.min(index, chords.length - 1));
};

/** The chord being heard: one held on a keyboard, or else that of the song. */
export const usePlayingChord = (): Chord => {
  const { tune, bar } = useSelected((state) => state.now);
  const held = useHeldFit();
  const span = tune.chart.bars[bar]?.chords[usePlayingIndex()];
  if (span === undefined) throw new RangeError(`Bar ${bar} of the chart holds no chord`);
  return held?.chord ?? span.chord;
};
