import type { Bar, Chart } from '../chart/chart';
import { excerpt } from '../chart/excerpt';
import { homeChord } from '../chart/home-chord';
import { inEndKey } from '../chart/key-at';
import { playedFeel } from '../feels/played-feels';
import { PLAIN_SHAPE } from '../players/passage';
import { addNotes } from '../score/finish-score';
import type { BeatGrid } from '../score/grid';
import { type Placing, placingOf } from '../score/placing';
import type { NoteEvent, Score } from '../score/score';
import { onlySounding, silentBars, withoutBars, withRests } from '../score/silence';
import { sliceScore } from '../score/slice-score';
import type { Chord } from '../theory/chord';
import { asTicks } from '../theory/units';
import { chorusShapes } from './arc';
import { arrange } from './arrange';
import { programAt, programOfChorus } from './changing-program';
import { closeChorus, finalChord, type ShapedChart } from './closing';
import { countInChart, countInScore, leadingShapes } from './count-in';
import { withFollowed } from './followed';
import { leadOfChorus, withHarpsTurns } from './lead';
import { changedFrom, leadingOn } from './leading-on';
import { openingOf } from './opening';
import type { Program, Section, TempoStep } from './program';
import { type Played, passageOf } from './section-passage';
import {
  chartInKeyOf,
  chartOfChorus,
  hasEnding,
  rangeOf,
  type Slot,
  slotAt,
  tempoOfChorus,
  turnaroundChoice,
} from './song-plan';
import { endingTempo, ritardSteps, steadyTempo, tempoFrom } from './tempo-steps';
import { turnedAround } from './turnarounds';
import { withStruckChanges, withWrittenStops } from './written-stops';

const firstChord = (program: Program, chorus: number): Chord => {
  const chord = chartOfChorus(program, chorus).bars[rangeOf(program, chorus).from]?.chords[0]?.chord;
  if (chord === undefined) throw new RangeError('Every bar of a chart needs a chord');
  return chord;
};

/** Where the parts play against the beat in a chorus; the ticks of a score are those of the beat. */
const placingAt = ({ style, ...program }: Program, chorus: number): Placing => {
  const feel = playedFeel(style.feel);
  const byTempo = (style.swing === 'feel' ? feel.swing : style.swing) === 'by tempo';
  return placingOf(feel.limbs, tempoOfChorus({ style, ...program }, chorus), byTempo);
};

interface Chorus extends Played {
  readonly tempo: readonly TempoStep[];
}

/** The chart of a whole chorus, its turnaround included; before another key its end leads there. */
const wholeChart = (program: Program, chorus: number, last: boolean): Chart => {
  const { plan } = program;
  const whole = chartOfChorus(program, chorus);
  if (last || plan.repeat !== null) return whole;
  const next = chartInKeyOf(programOfChorus(program, chorus + 1), chorus + 1);
  return leadingOn(whole, next, plan.turnarounds === 'as written');
};

const chorusOf = (program: Program, chorus: number, last: boolean): Chorus => {
  const { plan } = program;
  const whole = wholeChart(program, chorus, last);
  const left = plan.repeat === null ? rangeOf(program, chorus).from : 0;
  const shapes = chorusShapes(program, chorus, whole.bars.slice(left), last);
  const shaped = withStruckChanges({
    chart: whole,
    shapes: [...whole.bars.slice(0, left).map(() => PLAIN_SHAPE), ...shapes],
  });
  const steady = steadyTempo(program, chorus);
  if (!last)
    return { ...shaped, next: firstChord(programOfChorus(program, chorus + 1), chorus + 1), tempo: steady };
  if (plan.repeat !== null) return { ...shaped, next: null, tempo: steady };
  const closed = closeChorus(shaped, plan.ending);
  const slowing = plan.ritard ? ritardSteps(closed.chart, tempoOfChorus(program, chorus)) : [];
  return {
    ...closed,
    next: hasEnding(plan) ? homeChord(inEndKey(whole)) : null,
    tempo: slowing[0]?.at === 0 ? slowing : [...steady, ...slowing],
  };
};

/** Bars return from a drop-out with a cymbal, so that the player hears where the band is. */
const markReturns = (shaped: ShapedChart, silent: readonly boolean[]): ShapedChart => ({
  chart: shaped.chart,
  shapes: shaped.shapes.map((shape, bar) => (silent[bar - 1] === true ? { ...shape, crash: true } : shape)),
});

/** Which bars of the whole chorus are silent, counted through the bars that are played. */
const silenceOf = (program: Program, chorus: number): readonly boolean[] => {
  const { from, to } = rangeOf(program, chorus);
  const { dropOut } = program.plan;
  const within = dropOut === null ? [] : silentBars(dropOut, chorus, to - from + 1);
  return program.chart.bars.map((_, bar) => within[bar - from] ?? false);
};

/** Bars at the end of the last chorus that the ending replaces: what the lead had there no longer fits. */
const CLOSING_BARS = 2;

const leadNotesOf = (
  program: Program,
  { chorus, last }: Slot & { kind: 'chorus' },
  chart: Chart,
  grid: BeatGrid,
): readonly NoteEvent[] => {
  const notes = leadOfChorus(program, chorus, chart.key, grid);
  if (program.plan.repeat !== null) return notes;
  if (!last) {
    const turned = changedFrom(chartOfChorus(program, chorus), chart);
    return turned === null ? notes : notes.filter(({ at }) => at < turned);
  }
  const until = chart.bars.at(-CLOSING_BARS)?.at ?? chart.length;
  return notes.filter(({ at }) => at < until);
};

const chorusSection = (
  program: Program,
  index: number,
  slot: Slot & { kind: 'chorus' },
  fromBar: number,
): Section => {
  const { from, to } = rangeOf(program, slot.chorus);
  const start = from + fromBar;
  if (!Number.isInteger(fromBar) || fromBar < 0 || start > to) {
    throw new RangeError(`fromBar must be a whole number from 0 to ${to - from}, got ${fromBar}`);
  }
  const made = chorusOf(program, slot.chorus, slot.last);
  const silent = silenceOf(program, slot.chorus);
  const chart = withFollowed(made.chart, program.followed, slot.chorus);
  const shaped = withWrittenStops(markReturns({ ...made, chart }, silent));
  const cut = {
    chart: excerpt(shaped.chart, from, to + 1),
    shapes: withHarpsTurns(program, slot.chorus, shaped).slice(from, to + 1),
    next: made.next,
  };
  const passage = passageOf(program, slot, cut);
  const lead = leadNotesOf(program, slot, made.chart, passage.grids.lead);
  const cutAt = shaped.chart.bars[from]?.at ?? 0;
  const played = addNotes(
    cut.chart,
    withRests(arrange(passage), cut.chart),
    lead.filter(({ at }) => at >= cutAt).map((note) => ({ ...note, at: asTicks(note.at - cutAt) })),
  );
  const whole = withoutBars(played, cut.chart, silent.slice(from, to + 1));
  const startsAt = cut.chart.bars[fromBar]?.at ?? 0;
  const score = fromBar === 0 ? whole : sliceScore(whole, startsAt, whole.length);
  return {
    index,
    kind: 'chorus',
    chorus: slot.chorus,
    chart: excerpt(cut.chart, fromBar, cut.chart.bars.length),
    barNumbers: Array.from({ length: to - start + 1 }, (_, i) => start + i),
    score: onlySounding(score, program.plan.sounding),
    tempo: tempoFrom(made.tempo, cutAt + startsAt),
    placing: placingAt(program, slot.chorus),
    last: slot.last && !hasEnding(program.plan),
  };
};

const plainSection = (
  index: number,
  slot: Slot,
  played: Pick<Section, 'chart' | 'score' | 'tempo' | 'placing'>,
): Section => ({
  index,
  kind: slot.kind,
  chorus: slot.chorus,
  barNumbers: played.chart.bars.map(() => null),
  ...played,
  last: slot.kind === 'ending',
});

/** What the song's count-in leads in with: its pick-up, where the first chorus follows at once and as a whole. */
const pickUpOf = ({ plan }: Program, { chorus }: Slot, { pickUp }: Chart): Bar | null =>
  chorus === 0 && plan.intro === 'none' && plan.repeat === null ? (pickUp ?? null) : null;

interface LeadingIn {
  readonly chart: Chart;
  readonly pickUp: Bar;
  readonly next: Chord;
  readonly counted: Score;
}

const withPickUp = (program: Program, slot: Slot, { chart, pickUp, next, counted }: LeadingIn): Score => {
  const passage = passageOf(program, slot, { chart, shapes: leadingShapes(chart, pickUp), next });
  const played = withRests(arrange(passage), chart);
  return addNotes(
    chart,
    counted,
    played.events.filter(({ part }) => part !== 'click' && part !== 'drums'),
  );
};

const countInSection = (program: Program, index: number, slot: Slot & { kind: 'count-in' }): Section => {
  const whole = chartOfChorus(program, slot.chorus);
  const pickUp = pickUpOf(program, slot, whole);
  const next = firstChord(program, slot.chorus);
  const chart = countInChart(whole, slot.bars, next, pickUp);
  const counted = countInScore(chart);
  const score = pickUp === null ? counted : withPickUp(program, slot, { chart, pickUp, next, counted });
  return plainSection(index, slot, {
    chart,
    score: program.plan.sounding === 'click' ? onlySounding(score, 'click') : score,
    tempo: steadyTempo(program, slot.chorus),
  });
};

const introSection = (program: Program, index: number, slot: Slot & { kind: 'intro' }): Section => {
  const { plan } = program;
  const intro = plan.intro === 'none' ? 'turnaround' : plan.intro;
  const opening = openingOf(chartInKeyOf(program, 0), intro, tempoOfChorus(program, 0));
  const chart = turnedAround(opening.chart, turnaroundChoice(program), 0);
  const shaped = withStruckChanges({ ...opening, chart });
  const score = arrange(passageOf(program, slot, { ...shaped, next: firstChord(program, 0) }));
  return plainSection(index, slot, {
    chart,
    score: onlySounding(score, plan.sounding),
    tempo: steadyTempo(program, 0),
    placing: placingAt(program, 0),
  });
};

const endingSection = (program: Program, index: number, slot: Slot & { kind: 'ending' }): Section => {
  const { plan } = program;
  const final = finalChord(chartOfChorus(program, slot.chorus));
  const score = arrange(passageOf(program, slot, { ...final, next: null }));
  const bpm = endingTempo(plan.ending, final.chart.meter.beats, tempoOfChorus(program, slot.chorus));
  const tempo = [{ at: asTicks(0), bpm }];
  return plainSection(index, slot, {
    chart: final.chart,
    score: onlySounding(score, plan.sounding),
    tempo,
    placing: placingAt(program, slot.chorus),
  });
};

/**
 * One section of a song: index 0 is the count-in if there is one, then the intro if any, then the choruses, then the
 * ending; null after the end. Pure: the same program and index give the same section, and no section depends on
 * another, so that any can be made alone. `fromBar` leaves the first bars of a chorus (of the repeated range) away;
 * other sections ignore it. Throws RangeError when the index, the range or `fromBar` is out of bounds.
 *
 * @example
 * const chart = buildChart({ form: 'standard', key: 7, meter: '4/4' });
 * const { style, plan: usual } = DEFAULT_SETTINGS;
 * const plan = { ...usual, countInBars: 1, intro: 'none', choruses: 2, ending: 'held' };
 * const program = { chart, style, tempo: 96, plan };
 * sectionAt(program, 0).kind // 'count-in'
 * sectionAt(program, 1).chart.bars.length // 12
 * sectionAt(program, 3).kind // 'ending'
 * sectionAt(program, 4) // null
 */
export const sectionAt = (program: Program, index: number, fromBar = 0): Section | null => {
  const place = programAt(program, index);
  const section = plannedSection(place.program, place.index, fromBar);
  if (section === null || place.program === program) return section;
  const { bass, chords, kit, second } = place.program.style;
  return {
    ...section,
    index,
    instruments: { bass, chords, kit, ...(second !== 'none' && { second }) },
  };
};

const plannedSection = (program: Program, index: number, fromBar: number): Section | null => {
  const slot = slotAt(program.plan, index);
  if (slot === null) return null;
  if (slot.kind === 'count-in') return countInSection(program, index, slot);
  if (slot.kind === 'intro') return introSection(program, index, slot);
  if (slot.kind === 'ending') return endingSection(program, index, slot);
  return chorusSection(program, index, slot, fromBar);
};
