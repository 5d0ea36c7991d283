import type { Level } from '../feels/level';
import { type BarShape, PLAIN_SHAPE } from '../players/passage';
import type { Style } from '../players/style';
import { silentBars } from '../score/silence';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import type { Plan, Program } from './program';

/**
 * How a song breathes: each chorus gets an energy, and its bars get what follows from it (how full, how loud, where
 * the drums fill, who lays out). The plans are of this project; trading with the drums in fours or twos and
 * stop-time are trade usage (common practice, no source).
 */

/** The breathing plan: sparse, growing, full, a break, growing, fullest, and again. */
const BREATHE: readonly (number | 'break')[] = [0.28, 0.55, 0.8, 'break', 0.62, 0.95];

/** How full a bar of this energy is played. */
const levelOf = (energy: number): Level => (energy < 0.42 ? 0 : energy < 0.76 ? 1 : 2);

/** Energy of a chorus, 0–1, or a break. */
const energyOf = (arc: Plan['arc'], style: Style, chorus: number, last: boolean): number | 'break' => {
  const random = createRandom(seedFrom(style.seed, 'energy', chorus));
  const spread = (random() - 0.5) * 0.1;
  if (arc === 'breathe') {
    if (last && chorus > 0) return 0.85 + spread;
    const step = BREATHE[chorus % BREATHE.length] ?? 0.6;
    return step === 'break' ? step : step + spread;
  }
  return (arc === 'steady' ? 0.58 : 0.64) + spread;
};

const FILL_CHANCE = [0.35, 0.6, 0.85] as const;

const fillOf = (random: Random, bar: number, bars: number, level: Level): BarShape['fill'] => {
  if (bar === bars - 1) return level === 0 || random() < 0.25 ? 'short' : 'long';
  return bar % 4 === 3 && random() < FILL_CHANCE[level] ? 'short' : 'none';
};

/** Bars at one energy, growing a little towards the end; how full they are changes with the phrase, not within. */
const bandShapes = (random: Random, bars: number, energy: number, crash: boolean): readonly BarShape[] =>
  Array.from({ length: bars }, (_, bar) => {
    const here = energy + 0.1 * (bar / bars) - 0.03;
    const level = levelOf(energy + 0.1 * ((bar - (bar % 4)) / bars) - 0.03);
    return {
      ...PLAIN_SHAPE,
      level,
      gain: 0.85 + 0.26 * here + (bar % 4) * 0.008,
      fill: fillOf(random, bar, bars, level),
      crash: crash && bar === 0,
    };
  });

/** Where stop-time strikes: on 1, or on 1 and the "and" of 2 (common practice, no source). */
const STOP_HITS: readonly string[] = ['x', 'x', 'x. .x'];

const stopShapes = (random: Random, shapes: readonly BarShape[], bars: number): readonly BarShape[] => {
  const hits = pick(random, STOP_HITS);
  return shapes.map((shape, bar) => {
    if (bar >= bars) return bar === bars ? { ...shape, crash: true } : shape;
    const fill = bar === bars - 1 ? 'short' : 'none';
    return { ...shape, bass: 'hits', chords: 'hits', drums: 'hits', hits, fill, crash: false, gain: 1 };
  });
};

/** The break chorus: four bars of stop-time, or chords laying out, or everything down, then back up. */
const breakShapes = (random: Random, bars: number): readonly BarShape[] => {
  const kind = pick(random, ['stop', 'bass and drums', 'down'] as const);
  const half = Math.max(1, Math.floor(bars / 8) * 4);
  const low = bandShapes(random, bars, 0.34, false);
  const high = bandShapes(random, bars, 0.66, false);
  const joined = low.map((shape, bar) => {
    if (bar >= half) return { ...(high[bar] ?? shape), crash: bar === half };
    return kind === 'bass and drums' ? { ...shape, chords: 'tacet' as const } : shape;
  });
  return kind === 'stop' && bars > 4 ? stopShapes(random, joined, 4) : joined;
};

/** Trading with the drums: from the second chorus on the turns alternate through the choruses, the band first. */
const isDrumsTurn = (chorus: number, bars: number, bar: number, turn: number): boolean =>
  chorus > 0 && Math.floor(((chorus - 1) * bars + bar) / turn) % 2 === 1;

const tradeShapes = (shapes: readonly BarShape[], chorus: number, turn: number): readonly BarShape[] =>
  shapes.map((shape, bar) => {
    const place = (chorus - 1) * shapes.length + bar;
    const drumsTurn = isDrumsTurn(chorus, shapes.length, bar, turn);
    const first = place % turn === 0;
    if (!drumsTurn) return { ...shape, crash: first && place > 0, fill: 'none' };
    const band = first ? 'hits' : 'tacet';
    return { ...shape, bass: band, chords: band, drums: 'solo', hits: 'x', fill: 'none', crash: false };
  });

/** Bars of a turn when trading; null when the arc does not trade. */
const turnBars = (arc: Plan['arc']): number | null =>
  arc === 'trade fours' ? 4 : arc === 'trade twos' ? 2 : null;

/**
 * What the band does in each bar of a chorus. Depends on the program's style and plan and the chorus alone. A part
 * that plays alone plays through: breaks and turns are the whole band's.
 */
export const chorusShapes = (
  { style, plan }: Pick<Program, 'style' | 'plan'>,
  chorus: number,
  bars: number,
  last: boolean,
): readonly BarShape[] => {
  const random = createRandom(seedFrom(style.seed, 'arc', chorus));
  const arc = plan.sounding === 'band' ? plan.arc : 'steady';
  const energy = energyOf(arc, style, chorus, last);
  const crash = chorus > 0 && energy !== 'break' && energy > 0.45;
  const band = energy === 'break' ? breakShapes(random, bars) : bandShapes(random, bars, energy, crash);
  const turn = chorus > 0 && !last ? turnBars(arc) : null;
  const shaped = turn === null ? band : tradeShapes(band, chorus, turn);
  if (style.stopTime === 'off') return shaped;
  return stopShapes(random, shaped, style.stopTime === 'whole chorus' ? bars : Math.min(4, bars));
};

/** Who plays in a bar, where the plan gives somebody a turn. */
export type BandTurn = 'band' | 'drums' | 'silent';

/** Who plays in a bar of a chorus of so many bars: the band, the drums alone while trading, or nobody in a drop-out. */
export const bandTurn = (plan: Plan, chorus: number, bar: number, bars: number): BandTurn => {
  if (plan.dropOut !== null && silentBars(plan.dropOut, chorus, bars)[bar]) return 'silent';
  const last = plan.choruses !== null && chorus >= plan.choruses - 1;
  const turn = plan.sounding === 'band' && !last ? turnBars(plan.arc) : null;
  return turn !== null && isDrumsTurn(chorus, bars, bar, turn) ? 'drums' : 'band';
};
