import { useMemo } from 'react';
import { bandTurns } from '../../core/arranger/band-turn';
import { rangeOf } from '../../core/arranger/song-plan';
import { spanAround } from '../../core/practice/bar-span';
import { useSelected } from './session-context';
import type { Timed } from './use-turn';

/** A turn that the plan gives to the drums, or to nobody; null while the band plays. */
export const useBandTurn = (): Timed<'drums' | 'silent'> | null => {
  const playing = useSelected((state) => state.status.kind === 'playing' && state.warmUp === null);
  const chosen = useSelected((state) => state.settings.plan);
  const lastChorus = useSelected((state) => state.lastChorus);
  const now = useSelected((state) => state.now);
  const chart = useSelected((state) => state.tune.chart);
  return useMemo(() => {
    const { kind, formBar, chorus, bar, tune } = now;
    if (!playing || kind !== 'chorus' || formBar === null) return null;
    const plan = lastChorus === null ? chosen : { ...chosen, choruses: lastChorus + 1 };
    const { from, to } = rangeOf({ chart, plan }, chorus);
    const whole = bandTurns(plan, chorus, chart.bars.slice(from, to + 1));
    const turns = tune.chart.bars.map((_, at) => whole[formBar + at - bar - from] ?? 'band');
    const turn = turns[bar] ?? 'band';
    return turn === 'band' ? null : { kind: turn, span: spanAround(turns, bar) };
  }, [playing, chosen, lastChorus, now, chart]);
};
