import type { Bar } from '../chart/chart';
import { type PhrasePlace, phrasesOf } from '../chart/phrases';
import type { Level } from '../feels/level';
import { type BarShape, PLAIN_SHAPE } from '../players/passage';
import { silentBars } from '../score/silence';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import { barEnergies, breathingEnergy, type Dynamics, type Energy } from './energy';
import { beginsWithCrash, endsInFill, fillsOf } from './fill-plan';
import type { Plan, Program } from './program';

/**
 * How a song breathes: each chorus gets an energy, and its bars get what follows from it (how full, how loud, where
 * the drums fill, who lays out). The plans are of this project; trading with the drums in fours or twos and
 * stop-time are trade usage (common practice, no source).
 */

/** How full a bar of this energy is played. */
const levelOf = (energy: number): Level => (energy < 0.42 ? 0 : energy < 0.76 ? 1 : 2);

type Planned = Pick<Program, 'style' | 'plan'>;

const arcOf = (plan: Plan): Plan['arc'] => (plan.sounding === 'band' ? plan.arc : 'steady');

/** Energy of a chorus, 0–1, or a break. */
const energyOf = ({ style, plan }: Planned, chorus: number, last: boolean): Energy => {
  const spread = (createRandom(seedFrom(style.seed, 'energy', chorus))() - 0.5) * 0.1;
  const arc = arcOf(plan);
  if (arc === 'breathe') return last && chorus > 0 ? 0.85 + spread : breathingEnergy(style.seed, chorus);
  return (arc === 'steady' ? 0.58 : 0.64) + spread;
};

/** What a break is taken as where only one number will do. */
const BREAK_ENERGY = 0.5;
const numberOf = (energy: Energy): number => (energy === 'break' ? BREAK_ENERGY : energy);

interface Coming {
  readonly energy: number;
  readonly lastFilled: boolean;
  readonly dynamics: Dynamics;
}

/** Bars around one energy; how full they are changes with the phrase, not within. */
const bandShapes = (
  random: Random,
  phrases: readonly PhrasePlace[],
  { energy, lastFilled, dynamics }: Coming,
): readonly BarShape[] => {
  const energies = barEnergies(random, energy, phrases, dynamics);
  const levels = phrases.map((place, bar) => levelOf(energies[bar - place.bar] ?? energy));
  const fills = fillsOf(random, levels, phrases, lastFilled);
  return phrases.map((phrase, bar) => ({
    ...PLAIN_SHAPE,
    phrase,
    level: levels[bar] ?? 1,
    energy: Math.min(1, Math.max(0, energies[bar] ?? energy)),
    gain: 0.85 + 0.26 * (energies[bar] ?? energy),
    fill: fills[bar]?.fill ?? 'none',
    crash: fills[bar - 1]?.crashAfter ?? false,
  }));
};

/** Where stop-time strikes: on 1, or on 1 and the "and" of 2 (common practice, no source). */
const STOP_HITS: readonly string[] = ['x', 'x', 'x. .x'];

/** The way back into time after stop-time (common practice, no source). */
const STOP_FILLS = ['beat', 'half', 'pick-up', 'half'] as const;

/** Stop-time: hits, with a pick-up into the next bar every other time where they are plain, else after each phrase. */
const stopShapes = (random: Random, shapes: readonly BarShape[], bars: number): readonly BarShape[] => {
  const hits = pick(random, STOP_HITS);
  const wayBack = pick(random, STOP_FILLS);
  return shapes.map((shape, bar) => {
    if (bar >= bars) return bar === bars ? { ...shape, crash: true } : shape;
    const picksUp = bar % (hits === STOP_HITS[0] ? 2 : 4) === (hits === STOP_HITS[0] ? 1 : 3);
    const fill = bar === bars - 1 ? wayBack : picksUp ? 'pick-up' : 'none';
    return { ...shape, bass: 'hits', chords: 'hits', drums: 'hits', hits, fill, crash: false, gain: 1 };
  });
};

/** The beginning of the phrase nearest to the middle of a chorus, the earlier of two, but never its first bar. */
const middleOf = (phrases: readonly PhrasePlace[]): number => {
  const starts = phrases.flatMap(({ bar }, index) => (bar === 0 && index > 0 ? [index] : []));
  const away = (start: number): number => Math.abs(start - phrases.length / 2);
  return starts.reduce((best, start) => (away(start) < away(best) ? start : best), starts[0] ?? 1);
};

/** The break chorus: four bars of stop-time, or chords laying out, or everything down, then back up. */
const breakShapes = (
  random: Random,
  phrases: readonly PhrasePlace[],
  coming: Coming,
): readonly BarShape[] => {
  const kind = pick(random, ['stop', 'bass and drums', 'down'] as const);
  const half = middleOf(phrases);
  const low = bandShapes(random, phrases, { ...coming, energy: 0.34 });
  const high = bandShapes(random, phrases, { ...coming, energy: 0.66 });
  const joined = low.map((shape, bar) => {
    if (bar >= half) return { ...(high[bar] ?? shape), crash: bar === half };
    return kind === 'bass and drums' ? { ...shape, chords: 'tacet' as const } : shape;
  });
  return kind === 'stop' && phrases.length > 4 ? stopShapes(random, joined, 4) : joined;
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
  { style, plan }: Planned,
  chorus: number,
  bars: readonly Pick<Bar, 'place'>[],
  last: boolean,
): readonly BarShape[] => {
  const phrases = phrasesOf(bars);
  const random = createRandom(seedFrom(style.seed, 'arc', chorus));
  const arc = arcOf(plan);
  const energy = energyOf({ style, plan }, chorus, last);
  const lastFilled = endsInFill(style.seed, chorus, numberOf(energy));
  const coming = { energy: numberOf(energy), lastFilled, dynamics: plan.dynamics };
  const played =
    energy === 'break' ? breakShapes(random, phrases, coming) : bandShapes(random, phrases, coming);
  const before = chorus > 0 ? numberOf(energyOf({ style, plan }, chorus - 1, false)) : 0;
  const afterFill = chorus > 0 && endsInFill(style.seed, chorus - 1, before);
  const crash = energy !== 'break' && beginsWithCrash(style.seed, chorus, energy, afterFill);
  const band = played.map((shape, bar) => (bar === 0 ? { ...shape, crash } : shape));
  const turn = chorus > 0 && !last ? turnBars(arc) : null;
  const cued = cueLast(band, plan, chorus);
  const shaped = turn === null ? cued : tradeShapes(cued, chorus, turn);
  if (style.stopTime === 'off') return shaped;
  return stopShapes(
    random,
    shaped,
    style.stopTime === 'whole chorus' ? bars.length : Math.min(4, bars.length),
  );
};

/** The chorus before a last one ends in a long fill, and a cymbal begins the last (common practice, no source). */
const cueLast = (shapes: readonly BarShape[], plan: Plan, chorus: number): readonly BarShape[] => {
  const { choruses, repeat } = plan;
  if (choruses === null || repeat !== null || shapes.length <= 4) return shapes;
  return shapes.map((shape, bar): BarShape => {
    const before = chorus === choruses - 2 && bar === shapes.length - 1;
    if (before && shape.drums === 'time') return { ...shape, fill: shape.level === 0 ? 'half' : 'bar' };
    return chorus > 0 && chorus === choruses - 1 && bar === 0 ? { ...shape, crash: true } : shape;
  });
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
