import type { Chart } from '../chart/chart';
import { FORMS } from '../chart/forms';
import type { OwnChart } from '../chart-text/own-chart';
import { feelOf } from '../feels/feels';
import { harpName } from '../fit/advice-words';
import type { Harp } from '../harp/harp';
import { positionTitle } from '../harp/positions';
import { chartFor } from '../song/chosen-chart';
import { songSeconds } from '../song/song-sections';
import { formOf, harpFor } from '../song/tune';
import type { BookSong } from './book-song';

/** Choruses counted for a song that goes on until it is stopped. */
export const OPEN_CHORUSES = 6;

/** What a song comes to: read off its choices. */
export interface SongFacts {
  readonly chart: Chart;
  readonly harp: Harp;
  /** `C harp`, ASCII accidentals. */
  readonly harpName: string;
  /** `2nd position (cross)`. */
  readonly position: string;
  /** The key as it is written, ASCII: `Bb`, `A minor`. */
  readonly key: string;
  readonly feel: string;
  /** What the form or the chart is called. */
  readonly form: string;
  /** Beats a minute, whole. */
  readonly tempo: number;
  /** About how long it lasts with count-in and ending; open songs with `OPEN_CHORUSES`. */
  readonly seconds: number;
  /** True where the song goes on until it is stopped. */
  readonly open: boolean;
}

/** The charts a song can be played on: those of the player as they are now, and its own where that is gone. */
const chartsOf = ({ chart }: BookSong, ownCharts: readonly OwnChart[]): readonly OwnChart[] =>
  chart === null || ownCharts.some(({ id }) => id === chart.id) ? ownCharts : [...ownCharts, chart];

/** What a song comes to. @param ownCharts the player's charts as they are now. */
export const songFacts = (song: BookSong, ownCharts: readonly OwnChart[]): SongFacts => {
  const { choices } = song;
  const charts = chartsOf(song, ownCharts);
  const chart = chartFor(choices, charts);
  const harp = harpFor(choices, chart.key);
  const form = formOf(choices, charts);
  const { style, tempo, plan } = choices;
  const choruses = plan.choruses ?? OPEN_CHORUSES;
  return {
    chart,
    harp,
    harpName: harpName(harp),
    position: positionTitle(choices.position),
    key: `${chart.tonic}${chart.mode === 'minor' ? ' minor' : ''}`,
    feel: feelOf(style.feel).name,
    form: typeof form === 'string' ? FORMS[form].name : form.name,
    tempo: Math.round(tempo),
    seconds: songSeconds(
      { chart, style, tempo, plan },
      { choruses, countIn: plan.countInBars > 0, ending: true },
    ),
    open: plan.choruses === null,
  };
};
