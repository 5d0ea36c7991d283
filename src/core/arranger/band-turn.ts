import type { Bar } from '../chart/chart';
import { phrasesOf } from '../chart/phrases';
import { silentBars } from '../score/silence';
import type { Plan } from './program';

/** Bars of a turn when trading with the drums; null when the plan does not trade. */
const turnBars = ({ arc, sounding }: Plan): number | null =>
  sounding !== 'band' ? null : arc === 'trade fours' ? 4 : arc === 'trade twos' ? 2 : null;

/** How many turns of so many bars a phrase has: a single bar left over goes with the turn before it. */
const turnsIn = (phrase: number, turn: number): number =>
  Math.max(1, Math.floor(phrase / turn) + (phrase % turn > 1 ? 1 : 0));

/** Whose turn it is in a bar, and whether the turn begins there. */
export interface TradeTurn {
  readonly drums: boolean;
  readonly begins: boolean;
}

/**
 * Whose turn every bar of a chorus is while trading, from the second chorus on; null where nobody trades. Turns begin
 * with the form and with every phrase of it, so that nobody has to count across the top: what is left of a phrase is a
 * shorter turn, a single bar goes with the turn before. They alternate on through the choruses: after three turns of
 * twelve bars the drums begin the next (trade usage, no source).
 * @param bars those that the chorus plays.
 */
export const tradeTurns = (
  plan: Plan,
  chorus: number,
  bars: readonly Pick<Bar, 'place'>[],
): readonly TradeTurn[] | null => {
  const turn = turnBars(plan);
  const last = plan.choruses !== null && chorus >= plan.choruses - 1;
  if (turn === null || chorus === 0 || last) return null;
  let count = -1;
  const turns = phrasesOf(bars).map(({ bar, of }) => {
    const begins = bar % turn === 0 && bar / turn < turnsIn(of, turn);
    if (begins) count += 1;
    return { number: count, begins };
  });
  const before = (chorus - 1) * (count + 1);
  return turns.map(({ number, begins }) => ({ drums: (before + number) % 2 === 1, begins }));
};

/** Who plays in a bar, where the plan gives somebody a turn. */
export type BandTurn = 'band' | 'drums' | 'silent';

/**
 * Who plays in each bar of a chorus: the band, the drums alone while trading, or nobody in a drop-out.
 * @param bars those that the chorus plays.
 */
export const bandTurns = (
  plan: Plan,
  chorus: number,
  bars: readonly Pick<Bar, 'place'>[],
): readonly BandTurn[] => {
  const silent = plan.dropOut === null ? [] : silentBars(plan.dropOut, chorus, bars.length);
  const trading = tradeTurns(plan, chorus, bars);
  return bars.map((_, bar) => (silent[bar] ? 'silent' : trading?.[bar]?.drums ? 'drums' : 'band'));
};
