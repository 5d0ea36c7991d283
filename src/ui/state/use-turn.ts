import { useMemo } from 'react';
import type { BarRange } from '../../core/chart/chart';
import { spanAround } from '../../core/practice/bar-span';
import type { Turn } from '../../core/practice/trade-modes';
import type { Call } from '../../core/practice/trading';
import { usePractice } from './practice-context';
import { useSelected } from './session-context';

/** Somebody's turn: over which bars of the section it goes, the one being heard among them. */
export interface Timed<Kind> {
  readonly kind: Kind;
  readonly span: BarRange;
}

/** Whose turn it is while trading calls, and the call it is about; null when the player does not trade. */
export const useTradingTurn = (): (Timed<Turn> & { readonly call: Call | null }) | null => {
  const { trading } = usePractice();
  const now = useSelected((state) => state.now);
  return useMemo(() => {
    if (trading === null) return null;
    const { formBar, bar, tune } = now;
    // Bars of a repeated range stand in a row, so that one place tells all.
    const turnAt = (at: number): Turn =>
      (formBar === null ? 'listen' : trading.turns[formBar + at - bar]) ?? 'answer';
    const turns = tune.chart.bars.map((_, at) => turnAt(at));
    const call =
      trading.calls.findLast((each) => formBar !== null && each.bar <= formBar) ?? trading.calls[0];
    return { kind: turnAt(bar), span: spanAround(turns, bar), call: call ?? null };
  }, [trading, now]);
};
