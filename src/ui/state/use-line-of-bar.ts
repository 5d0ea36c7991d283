import { useMemo } from 'react';
import { soundId } from '../../core/harp/tab';
import { usePractice } from './practice-context';
import { useSelected } from './session-context';

/** The line's sounds in the bar being heard, and where it leads in the next; null when no line is drawn. */
export const useLineOfBar = (): {
  readonly ids: readonly string[];
  readonly onward: string | null;
} | null => {
  const { line } = usePractice();
  const now = useSelected((state) => state.now.formBar);
  const next = useSelected((state) => state.next?.formBar ?? null);
  const bars = useSelected((state) => state.tune.chart.bars);
  return useMemo(() => {
    if (line === null) return null;
    const idsOf = (index: number | null): readonly string[] => {
      const bar = index === null ? undefined : bars[index];
      if (!bar) return [];
      return line.notes
        .filter(({ at }) => at >= bar.at && at < bar.at + bar.length)
        .map(({ sound }) => soundId(sound));
    };
    return { ids: idsOf(now), onward: idsOf(next)[0] ?? null };
  }, [line, now, next, bars]);
};
