import type { Chart } from '../chart/chart';
import type { Harp, Sound } from '../harp/harp';
import { isInReach, type TechniqueChoice } from '../harp/reach';
import type { Chord, Degree, NoteName } from '../theory/chord';
import type { Ticks } from '../theory/units';
import { COMFORTABLE_BEATS, type CostContext, LINE_WEIGHTS, type LineCost, lineShape } from './line-cost';
import { pathCost, searchLine, VARIETY } from './line-search';
import { type LineKind, lineSlots, type Pace } from './line-slots';
import type { LineTaste } from './line-tastes';

/** What a line is wanted for. */
export interface LineSpec {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  readonly kind: LineKind;
  /** Notes a bar of a chord-tone line; other kinds have their own. */
  readonly pace?: Pace;
  readonly taste: LineTaste;
  /** 0 gives the smoothest line, other numbers other good ones. */
  readonly seed: number;
  /** Beats of one breath that are comfortable at the tempo, 1 to 32 in halves. */
  readonly comfortableBeats?: number;
}

/** A sound at its place in a line, and what it is over its chord. */
export interface LineNote {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly sound: Sound;
  /** Above the chord's root. */
  readonly degree: Degree;
  /** Spelled as the chord spells it, without octave. */
  readonly name: NoteName;
  readonly chord: Chord;
}

/** A place of a line that nothing in reach can fill. */
export interface LineRest {
  readonly at: Ticks;
  readonly length: Ticks;
  readonly chord: Chord;
  /** What was wanted there. */
  readonly degrees: readonly Degree[];
}

/** A line through the changes of a chart. */
export interface Line {
  readonly kind: LineKind;
  readonly notes: readonly LineNote[];
  readonly rests: readonly LineRest[];
  readonly cost: LineCost;
}

const contextOf = ({ chart, kind, pace = 1, taste, comfortableBeats }: LineSpec): CostContext => {
  const beats = comfortableBeats ?? COMFORTABLE_BEATS;
  if (!(beats >= 1 && beats <= 32))
    throw new RangeError(`A breath is comfortable for 1 to 32 beats, got ${beats}`);
  return {
    weights: LINE_WEIGHTS[taste],
    shape: lineShape(kind, pace),
    beatTicks: chart.meter.beatTicks,
    comfortableBeats: Math.round(2 * beats) / 2,
  };
};

/**
 * The smoothest line of a kind through a chart on a harp, as far as the player's technique reaches; the cost is that
 * of line-cost.ts. With a seed other than 0 a good line that differs, at most `VARIETY` dearer a note. The same
 * specification always gives the same line. Throws RangeError on a breath outside 1 to 32 beats.
 *
 * @example
 * const chart = buildChart({ form: 'standard', key: 7, meter: '4/4' });
 * const harp = buildHarp({ tuning: RICHTER, key: 0, octave: 0 });
 * // The seventh of G7 goes down to the third of C7.
 * const line = findLine({ chart, harp, technique: EVERY_TECHNIQUE, kind: 'guide tones', taste: 'even', seed: 0 });
 * lineTab(line, chart, 'signs').slice(3, 5) // ['-5', '5']
 */
export const findLine = (spec: LineSpec): Line => {
  const { chart, harp, technique, kind, pace = 1, seed } = spec;
  const slots = lineSlots(chart, kind, pace);
  const sounds = harp.sounds.filter((sound) => isInReach(sound, technique));
  const context = contextOf(spec);
  const path = searchLine({ slots, harp, sounds, context, seed, variety: VARIETY });
  const notes: LineNote[] = [];
  const rests: LineRest[] = [];
  slots.forEach(({ at, length, chord, tones }, i) => {
    const choice = path[i] ?? null;
    if (choice === null) {
      rests.push({ at, length, chord, degrees: tones.map(({ degree }) => degree) });
    } else {
      const { degree, name } = choice.tone;
      notes.push({ at, length, sound: choice.priced.sound, degree, name, chord });
    }
  });
  return { kind, notes, rests, cost: pathCost(slots, path, context) };
};
