import type { Chart } from '../chart/chart';
import { countWhile } from '../theory/count-while';
import { asTicks } from '../theory/units';
import { type NoteEvent, PART_IDS, type PartId, type Score } from './score';
import type { SOUNDINGS } from './soundings';

/** One of `SOUNDINGS`. */
export type Sounding = (typeof SOUNDINGS)[number];

/** The band plays `play` bars, then is silent for `rest` bars, over and over. */
export interface DropOut {
  readonly play: number;
  readonly rest: number;
}

const SOUNDING: Readonly<Record<Sounding, ReadonlySet<PartId>>> = {
  band: new Set(PART_IDS),
  click: new Set(['click', 'lead']),
  drums: new Set(['drums', 'click', 'lead']),
  bass: new Set(['bass', 'click', 'lead']),
};

/** Leaves only the parts that are to sound; the click stays (its fader decides), and a lead was asked for by itself. */
export const onlySounding = (score: Score, sounding: Sounding): Score =>
  sounding === 'band'
    ? score
    : { ...score, events: score.events.filter(({ part }) => SOUNDING[sounding].has(part)) };

/**
 * Which bars of a chorus are silent: the song's bars count on through the choruses, `play` sounding and `rest`
 * silent in turn. Throws RangeError unless both are whole numbers of at least 1.
 */
export const silentBars = (dropOut: DropOut, chorus: number, bars: number): readonly boolean[] => {
  const { play, rest } = dropOut;
  if (!(Number.isInteger(play) && Number.isInteger(rest) && play >= 1 && rest >= 1)) {
    throw new RangeError(`A drop-out needs 1 bar or more of each, got play ${play}, rest ${rest}`);
  }
  return Array.from({ length: bars }, (_, bar) => (chorus * bars + bar) % (play + rest) >= play);
};

/** Silences bars: nothing starts there, and what sounds before is cut at the bar line. */
export const withoutBars = (score: Score, chart: Chart, silent: readonly boolean[]): Score => {
  const walls = chart.bars.filter((_, bar) => silent[bar]).map((bar) => bar.at);
  if (walls.length === 0) return score;
  const cut = (event: NoteEvent): NoteEvent => {
    const wall = walls[countWhile(walls.length, (i) => (walls[i] ?? 0) <= event.at)];
    return wall !== undefined && event.at + event.length > wall
      ? { ...event, length: asTicks(wall - event.at) }
      : event;
  };
  const sounds = (event: NoteEvent): boolean => {
    const bar = countWhile(chart.bars.length, (i) => (chart.bars[i]?.at ?? 0) <= event.at) - 1;
    return silent[bar] !== true;
  };
  return { ...score, events: score.events.filter(sounds).map(cut) };
};

/** Parts that go on where the band rests: the click, and a lead, which was asked for by itself. */
const OWN_WAY: ReadonlySet<PartId> = new Set(['click', 'lead']);

/** A stroke may come as late as this behind its place, in ticks: a sixteenth triplet, more than any feel shifts it. */
const STROKE_ROOM = 80;

/** Stretches of ticks without the band: rests, and what follows a stroke. */
const gapsOf = (chart: Chart): readonly { readonly from: number; readonly to: number }[] =>
  chart.bars.flatMap(({ chords }) =>
    chords.flatMap(({ at, length, band }) => {
      if (band === undefined) return [];
      return [{ from: band === 'stop' ? at + STROKE_ROOM : at, to: at + length }];
    }),
  );

/**
 * Silences the band where its chart says so (`ChordSpan.band`): nothing of it starts in a rest or behind a stroke, and
 * what sounds before is cut where a rest begins, or a beat after a stroke.
 */
export const withRests = (score: Score, chart: Chart): Score => {
  const gaps = gapsOf(chart);
  if (gaps.length === 0) return score;
  const longest = chart.meter.beatTicks;
  const events = score.events.flatMap((event): readonly NoteEvent[] => {
    if (OWN_WAY.has(event.part)) return [event];
    if (gaps.some(({ from, to }) => event.at >= from && event.at < to)) return [];
    const gap = gaps.find(({ from, to }) => to > event.at && event.at + event.length > from);
    if (gap === undefined) return [event];
    const struck = event.at + STROKE_ROOM >= gap.from && event.at < gap.from;
    const until = struck ? Math.max(gap.from, Math.min(event.at + longest, gap.to)) : gap.from;
    return [{ ...event, length: asTicks(Math.min(event.length, until - event.at)) }];
  });
  return { ...score, events };
};
