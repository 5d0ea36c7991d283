import { transpose } from '../chart/build-chart';
import type { Chart } from '../chart/chart';
import type { PitchClass } from '../theory/units';
import { adviceReasons } from './advice-words';
import type { Harp } from './harp';
import { effortsOf, type Place, placesOf, type Reached, reachedOf, scorePlaces, wantedOf } from './places';
import { positionOf } from './positions';
import { rankAdvice } from './rank-advice';
import type { TechniqueChoice } from './reach';

/** How one harp stands to the song in one key. */
export interface Advice {
  /** Index in the list of harps asked about. */
  readonly harpIndex: number;
  readonly harp: Harp;
  readonly key: PitchClass;
  /** 1–12. */
  readonly position: number;
  /** 0–1; higher is better. */
  readonly score: number;
  readonly reached: Reached;
  readonly places: readonly Place[];
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
  /** Index of the harp the player holds, which wins near-ties. */
  readonly inHand?: number | null;
}

/**
 * Ranks harps for a song, best first: how much of its chord tones, guide tones and blue notes each reaches with
 * this technique, octave by octave, and how easily; usual positions and the harp in hand win near-ties. One row
 * per harp and key. Throws RangeError on a chart without bars.
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
    wanted: wantedOf(key === chart.key ? chart : transpose(chart, key - chart.key)),
  }));
  const rows = harps.flatMap((harp, harpIndex) => {
    const efforts = effortsOf(harp, technique);
    return songs.map(({ key, wanted }): Advice => {
      const places = placesOf(wanted, efforts);
      const position = positionOf(harp.key, key);
      const summary = reachedOf(places);
      const reasons = adviceReasons({ harp, position, places, reached: summary });
      return {
        harpIndex,
        harp,
        key,
        position,
        score: scorePlaces(places),
        reached: summary,
        places,
        reasons,
      };
    });
  });
  return rankAdvice(rows, chart.mode, inHand);
};
