import type { Chart } from '../chart/chart';
import { asTicks } from '../theory/units';
import { type NoteEvent, PART_IDS, type PartId, type Score } from './score';

/** How much of the band sounds. */
export const SOUNDINGS = ['band', 'drums', 'bass', 'click'] as const;
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
  const cut = (event: NoteEvent): NoteEvent => {
    const wall = walls.find((at) => at > event.at);
    return wall !== undefined && event.at + event.length > wall
      ? { ...event, length: asTicks(wall - event.at) }
      : event;
  };
  const sounds = (event: NoteEvent): boolean => {
    const bar = chart.bars.findLastIndex(({ at }) => at <= event.at);
    return silent[bar] !== true;
  };
  return { ...score, events: score.events.filter(sounds).map(cut) };
};
