import { type Turnarounds, turnedAround } from '../arranger/turnarounds';
import { buildChart } from '../chart/build-chart';
import type { Chart, MeterName } from '../chart/chart';
import { type FormId, isFormId } from '../chart/forms';
import type { OwnChart } from '../chart-text/own-chart';
import { feelOf } from '../feels/feels';
import { type Fit, fitChart } from '../fit/fit';
import type { Harp } from '../harp/harp';
import { buildOwnedHarp } from '../harp/harp-case';
import { harpKeyFor, songKey } from '../harp/positions';
import type { Settings } from '../settings/settings';
import type { PitchClass } from '../theory/units';

/** What is being played and what it is played on: all computed from the settings. */
export interface Tune {
  readonly chart: Chart;
  readonly harp: Harp;
  readonly position: number;
  readonly fit: Fit;
}

/** The form where nothing has the id that is chosen. */
export const STANDARD_FORM: FormId = 'standard';

/** The form chosen, built-in or the player's own; the standard one where nothing has its id. */
export const formOf = (
  { formId }: Pick<Settings, 'formId'>,
  ownCharts: readonly OwnChart[],
): FormId | OwnChart =>
  isFormId(formId) ? formId : (ownCharts.find(({ id }) => id === formId) ?? STANDARD_FORM);

/** The choices a chart is made from. */
export type ChartChoices = Pick<
  Settings,
  'formId' | 'style' | 'harpKey' | 'position' | 'plan' | 'line' | 'trade'
>;

/** The choices a harp is made from. */
export type HarpChoices = Pick<
  Settings,
  'tuning' | 'position' | 'harpOctave' | 'intonation' | 'reference' | 'stretch' | 'valved'
>;

/** The meter the chosen feel plays in. */
export const meterFor = (settings: Pick<Settings, 'style'>): MeterName =>
  feelOf(settings.style.feel).meter ?? '4/4';

/** The key the song is in: in second position a fifth above the harp, and so on round the circle. */
export const songKeyOf = (settings: Pick<Settings, 'harpKey' | 'position'>): PitchClass =>
  songKey(settings.harpKey, settings.position);

/**
 * How the chosen form turns around: a line or calls lie over one chart, so that a figure that would change from chorus
 * to chorus gives way to one.
 */
export const turnaroundsFor = ({
  plan,
  line,
  trade,
}: Pick<ChartChoices, 'plan' | 'line' | 'trade'>): Turnarounds =>
  plan.turnarounds === 'varied' && (line.kind !== 'none' || trade.on) ? 'one' : plan.turnarounds;

/** A built-in form in a key, with its turnaround where all choruses have one. */
export const formChart = (settings: ChartChoices, form: FormId, key: PitchClass): Chart => {
  const chart = buildChart({ form, key, meter: meterFor(settings) });
  return turnaroundsFor(settings) === 'one'
    ? turnedAround(
        chart,
        { style: settings.style, tempo: feelOf(settings.style.feel).tempo.usual, turnarounds: 'one' },
        0,
      )
    : chart;
};

/** The harp that puts a chart's key into the chosen position. */
export const harpFor = (settings: HarpChoices, key: PitchClass): Harp =>
  buildOwnedHarp({
    id: '',
    name: '',
    tuning: settings.tuning,
    key: harpKeyFor(key, settings.position),
    octave: settings.harpOctave,
    intonation: settings.intonation,
    reference: settings.reference,
    stretch: settings.stretch,
    valved: settings.valved,
  });

/** A chart together with the harp in the chosen position and what fits each of its bars. */
export const tuneFor = (settings: Settings, chart: Chart): Tune => {
  const harp = harpFor(settings, chart.key);
  const { technique, position } = settings;
  return { chart, harp, position, fit: fitChart({ chart, harp, technique }) };
};

/** Everything of the choices that a tune is made from: where none of it differs, `chartFor` and `tuneFor` give the same. */
const tunedBy = (settings: Settings): readonly unknown[] => {
  const { formId, style, harpKey, position, technique } = settings;
  const { tuning, harpOctave, intonation, reference, stretch, valved } = settings;
  return [
    ...[formId, style.feel, turnaroundsFor(settings), harpKey, position, technique],
    ...[tuning, harpOctave, intonation, reference, stretch, valved],
  ];
};

/** Whether two sets of choices make the same tune, as far as can be told without making it. */
export const isSameTune = (a: Settings, b: Settings): boolean => {
  const made = tunedBy(b);
  return tunedBy(a).every((part, i) => part === made[i]);
};

/** A repeated range that a form with so many bars does not have goes. */
export const withFittingRepeat = (settings: Settings, bars: number): Settings => {
  const { repeat } = settings.plan;
  if (repeat === null || repeat.to < bars) return settings;
  return { ...settings, plan: { ...settings.plan, repeat: null } };
};
