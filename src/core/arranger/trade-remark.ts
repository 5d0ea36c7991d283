import type { Bar } from '../chart/chart';
import { onceBars } from '../chart/once';
import { counted, listed } from '../theory/wording';
import { tradeTurns } from './band-turn';
import type { Plan } from './program';

/** The first and the last chorus are the whole band's: fewer than these leave nothing to trade. */
const LEAST_CHORUSES = 3;

const lengthsOf = (begins: readonly boolean[]): readonly number[] => {
  const starts = begins.flatMap((begin, bar) => (begin ? [bar] : []));
  return starts.map((start, i) => (starts[i + 1] ?? begins.length) - start);
};

/**
 * What a plan that trades with the drums comes to over the bars of a form, in a sentence or two: who plays when, and what
 * becomes of bars that do not make a whole turn. Undefined where nobody trades.
 */
export const tradeRemark = (plan: Plan, chart: { readonly bars: readonly Bar[] }): string | undefined => {
  const { from, to } = plan.repeat ?? { from: onceBars(chart), to: chart.bars.length - 1 };
  const bars = chart.bars.slice(from, to + 1);
  const turns = tradeTurns({ ...plan, choruses: null }, 1, bars);
  if (turns === null) return;
  if (plan.choruses !== null && plan.choruses < LEAST_CHORUSES)
    return 'The first chorus and the last are the whole band’s: choose three or more to trade.';
  const usual = plan.arc === 'trade twos' ? 2 : 4;
  const lengths = lengthsOf(turns.map(({ begins }) => begins));
  const odd = lengths.filter((length) => length !== usual);
  const who = 'Band and drums take turns from the second chorus on.';
  if (odd.length === 0) return who;
  if (odd.length === 1 && lengths.at(-1) !== usual)
    return `${who} Here the last turn of a chorus has ${counted(odd[0] ?? 0, 'bar')}.`;
  const sizes = [...new Set(odd)].sort((a, b) => a - b);
  return `${who} Turns begin anew with every line: here some have ${listed(sizes.map(String))} bars.`;
};
