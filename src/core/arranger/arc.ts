import type { Bar } from '../chart/chart';
import { type PhrasePlace, phrasesOf } from '../chart/phrases';
import { feelOf } from '../feels/feels';
import type { Level } from '../feels/level';
import { type BarShape, PLAIN_SHAPE } from '../players/passage';
import { createRandom, pick, type Random, seedFrom } from '../theory/random';
import { type TradeTurn, tradeTurns } from './band-turn';
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

/** Where stop-time strikes in two bars: on 1, or on 1 and the "and" of 2, in both or in one (common practice, no source). */
const STOP_FIGURES: readonly (readonly [string, string])[] = [
  ['x', 'x'],
  ['x', 'x'],
  ['x. .x', 'x. .x'],
  ['x. .x', 'x'],
  ['x', 'x. .x'],
];

/** The way back into time after stop-time (common practice, no source). */
const STOP_FILLS = ['beat', 'half', 'pick-up', 'half'] as const;

/** Stop-time: hits, with a pick-up into the next bar every other time where they are plain, else after each phrase. */
const stopShapes = (random: Random, shapes: readonly BarShape[], bars: number): readonly BarShape[] => {
  const figure = pick(random, STOP_FIGURES);
  const plain = figure[0] === figure[1] && figure[0] === 'x';
  const wayBack = pick(random, STOP_FILLS);
  return shapes.map((shape, bar) => {
    if (bar >= bars) return bar === bars ? { ...shape, crash: true } : shape;
    const second = shape.phrase.bar % 2 === 1;
    const picksUp = shape.phrase.ends !== 'nothing' || (plain && second);
    const fill = bar === bars - 1 ? wayBack : picksUp ? 'pick-up' : 'none';
    const hits = figure[second ? 1 : 0];
    return { ...shape, bass: 'hits', chords: 'hits', drums: 'hits', hits, fill, crash: false, gain: 1 };
  });
};

/** A break lasts about this at most at the feel's usual tempo, in seconds and in bars of four beats: nobody is to be missed. */
const LONGEST_BREAK = 20;
const BAR_BEATS = 4;

/** Where a break ends: the beginning of the phrase nearest to the middle of a chorus, the earlier of two, never its first bar. */
const breakEnd = ({ feel }: Planned['style'], phrases: readonly PhrasePlace[]): number => {
  const most = (LONGEST_BREAK * feelOf(feel).tempo.usual) / (60 * BAR_BEATS);
  const starts = phrases.flatMap(({ bar }, index) => (bar === 0 && index > 0 ? [index] : []));
  const away = (start: number): number => Math.abs(start - Math.min(phrases.length / 2, most));
  return starts.reduce((best, start) => (away(start) < away(best) ? start : best), starts[0] ?? 1);
};

/** The break chorus: four bars of stop-time, or chords laying out, or everything down, then back up. */
const breakShapes = (
  random: Random,
  phrases: readonly PhrasePlace[],
  coming: Coming,
  half: number,
): readonly BarShape[] => {
  const kind = pick(random, ['stop', 'bass and drums', 'down'] as const);
  const low = bandShapes(random, phrases, { ...coming, energy: 0.34 });
  const high = bandShapes(random, phrases, { ...coming, energy: 0.66 });
  const joined = low.map((shape, bar) => {
    if (bar >= half) return { ...(high[bar] ?? shape), crash: bar === half };
    return kind === 'bass and drums' ? { ...shape, chords: 'tacet' as const } : shape;
  });
  return kind === 'stop' && phrases.length > 4 ? stopShapes(random, joined, 4) : joined;
};

/** While trading: the band plays its turns without fills, and answers each of the drums with one stroke. */
const tradeShapes = (
  shapes: readonly BarShape[],
  turns: readonly (TradeTurn | null)[],
  chorus: number,
): readonly BarShape[] =>
  shapes.map((shape, bar): BarShape => {
    const turn = turns[bar] ?? null;
    if (turn === null) return shape;
    const { drums, begins } = turn;
    if (!drums) return { ...shape, crash: begins && (chorus > 1 || bar > 0), fill: 'none' };
    const band = begins ? 'hits' : 'tacet';
    return { ...shape, bass: band, chords: band, drums: 'solo', hits: 'x', fill: 'none', crash: false };
  });

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
  const energy = energyOf({ style, plan }, chorus, last);
  const lastFilled = endsInFill(style.seed, chorus, numberOf(energy));
  const coming = { energy: numberOf(energy), lastFilled, dynamics: plan.dynamics };
  const played =
    energy === 'break'
      ? breakShapes(random, phrases, coming, breakEnd(style, phrases))
      : bandShapes(random, phrases, coming);
  const earlier = chorus > 0 ? numberOf(energyOf({ style, plan }, chorus - 1, false)) : 0;
  const afterFill = chorus > 0 && endsInFill(style.seed, chorus - 1, earlier);
  const crash = energy !== 'break' && beginsWithCrash(style.seed, chorus, energy, afterFill);
  const band = played.map((shape, bar) => (bar === 0 ? { ...shape, crash } : shape));
  const cued = cueLast(band, plan, chorus);
  const range = plan.repeat ?? { from: 0, to: bars.length - 1 };
  const turns = last ? null : tradeTurns(plan, chorus, bars.slice(range.from, range.to + 1));
  const before = bars.slice(0, range.from).map(() => null);
  const shaped = turns === null ? cued : tradeShapes(cued, [...before, ...turns], chorus);
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
