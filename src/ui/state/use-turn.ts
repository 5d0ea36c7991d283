import { useMemo } from 'react';
import { bandTurn } from '../../core/arranger/arc';
import { type BarSpan, spanAround } from '../../core/practice/bar-span';
import type { Call, Turn } from '../../core/practice/trading';
import { usePractice } from './practice-context';
import { useSelected } from './session-context';

/** Somebody's turn: over which bars of the section it goes, the one being heard among them. */
export interface Timed<Kind> {
  readonly kind: Kind;
  readonly span: BarSpan;
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

/** A turn that the plan gives to the drums, or to nobody; null while the band plays. */
export const useBandTurn = (): Timed<'drums' | 'silent'> | null => {
  const playing = useSelected((state) => state.status.kind === 'playing' && state.warmUp === null);
  const chosen = useSelected((state) => state.settings.plan);
  const lastChorus = useSelected((state) => state.lastChorus);
  const now = useSelected((state) => state.now);
  const all = useSelected((state) => state.tune.chart.bars.length);
  return useMemo(() => {
    const { kind, formBar, chorus, bar, tune } = now;
    if (!playing || kind !== 'chorus' || formBar === null) return null;
    const plan = lastChorus === null ? chosen : { ...chosen, choruses: lastChorus + 1 };
    const { from, to } = plan.repeat ?? { from: 0, to: all - 1 };
    const turns = tune.chart.bars.map((_, at) =>
      bandTurn(plan, chorus, formBar + at - bar - from, to - from + 1),
    );
    const turn = turns[bar] ?? 'band';
    return turn === 'band' ? null : { kind: turn, span: spanAround(turns, bar) };
  }, [playing, chosen, lastChorus, now, all]);
};
