import { transpose } from '../chart/build-chart';
import type { Chart } from '../chart/chart';
import type { Harp } from '../harp/harp';
import { positionOf } from '../harp/positions';
import type { TechniqueChoice } from '../harp/reach';
import type { PitchClass } from '../theory/units';
import { adviceReasons } from './advice-words';
import { rankAdvice } from './rank-advice';
import { choiceByCustom } from './usual-positions';
import {
  effortsOf,
  type Reached,
  reachedOf,
  scoreOf,
  type WantedNote,
  wantedNotesOf,
  wantedTonesOf,
} from './wanted-notes';

/** How one harp stands to the song in one key. */
export interface Advice {
  /** Index in the list of harps asked about. */
  readonly harpIndex: number;
  readonly harp: Harp;
  readonly key: PitchClass;
  /** 1–12. */
  readonly position: number;
  /** Which choice the position is by custom, 1 first, as `choiceWords` says it. */
  readonly choice: number;
  /** 0–100, whole: `score` as it is shown. */
  readonly fit: number;
  /** 0–1; higher is better. */
  readonly score: number;
  readonly reached: Reached;
  readonly notes: readonly WantedNote[];
  /** Plain sentences, ASCII accidentals, the most telling first. */
  readonly reasons: readonly string[];
}

/** What is asked. */
export interface AdviceSpec {
  readonly chart: Chart;
  /** The harps the player owns. */
  readonly harps: readonly Harp[];
  readonly technique: TechniqueChoice;
  /** Keys the song may be played in; its own where absent. Twelve keys put every harp in every position. */
  readonly keys?: readonly PitchClass[];
  /** Index of the harp the player holds, which wins ties. */
  readonly inHand?: number | null;
}

/**
 * Ranks harps for a song, best first: the positions players usually try for such a song and technique, and among them
 * how much of its chord tones, guide tones and blue notes each harp reaches, octave by octave, and how easily; the
 * harp in hand wins ties. One row per harp and key, less those beyond a beginner where there are others. Throws RangeError on a chart without bars.
 */
export const advise = ({
  chart,
  harps,
  technique,
  keys = [chart.key],
  inHand = null,
}: AdviceSpec): readonly Advice[] => {
  if (chart.bars.length === 0) throw new RangeError('Advice needs a chart of 1 bar or more, got 0');
  const songs = keys.map((key) => ({
    key,
    wanted: wantedTonesOf(key === chart.key ? chart : transpose(chart, key - chart.key)),
  }));
  const rows = harps.flatMap((harp, harpIndex) => {
    const efforts = effortsOf(harp, technique);
    return songs.map(({ key, wanted }): Advice => {
      const notes = wantedNotesOf(wanted, efforts);
      const position = positionOf(harp.key, key);
      const summary = reachedOf(notes);
      const score = scoreOf(notes);
      const reasons = adviceReasons({ harp, position, notes, reached: summary });
      return {
        harpIndex,
        harp,
        key,
        position,
        choice: choiceByCustom(harp.tuning, position, chart.mode, technique),
        fit: Math.round(100 * score),
        score,
        reached: summary,
        notes,
        reasons,
      };
    });
  });
  return rankAdvice(rows, inHand);
};
