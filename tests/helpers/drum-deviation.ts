/**
 * How far a hit is from a measured one, in tolerances. Tolerances: times within a factor, levels within dB, both about
 * what an ear tells apart in a single hit; wider for octaves 20 dB and more under the whole, which carry little.
 */
import type { HitFigures } from './drum-measure';
import type { ModeFigure } from './drum-tone-figures';

/** Figures of a measured hit; what it leaves out is not compared. */
export type HitTarget = Partial<HitFigures>;

export interface Deviation {
  readonly figure: string;
  readonly value: number;
  readonly target: number;
  /** In tolerances; 1 is the edge. */
  readonly deviation: number;
}

const FACTORS = {
  attack: 1.4,
  timeToPeak: 1.6,
  t20: 1.3,
  t60: 1.25,
  t60Early: 1.3,
  t60Late: 1.3,
  centroid: 1.15,
  body: 1.08,
  modeHz: 1.06,
  modeT60: 1.4,
};
const DECIBELS = { crest: 2, flatness: 2.5, tonalToNoise: 2.5, loudness: 1, modeDb: 4 };
/** Quieter octaves count as equal, and only this many modes within 15 dB are compared. */
const BAND_FLOOR = -45;
const MODE_FLOOR = -15;
const MODES = 4;

const bandTolerance = (level: number): number => (level >= -20 ? 3 : level >= -35 ? 5 : 8);
const bandFactor = (octave: number, level: number): number => (octave < 3 ? 1.6 : level >= -20 ? 1.35 : 1.5);

type Reading = number | null | undefined;

const inFactors = (figure: string, value: Reading, target: Reading, factor: number): Deviation[] =>
  value && target ? [{ figure, value, target, deviation: Math.log(value / target) / Math.log(factor) }] : [];
const inDecibels = (figure: string, value: Reading, target: Reading, tolerance: number): Deviation[] =>
  typeof value === 'number' && typeof target === 'number'
    ? [{ figure, value, target, deviation: (value - target) / tolerance }]
    : [];

const bandDeviations = (hit: HitFigures, { bands = [], bandT60 = [] }: HitTarget): Deviation[] => [
  ...bands.flatMap((level, i) => {
    const value = Math.max(hit.bands[i] ?? BAND_FLOOR, BAND_FLOOR);
    return inDecibels(`bands[${i}]`, value, Math.max(level, BAND_FLOOR), bandTolerance(level));
  }),
  ...bandT60.flatMap((t60, i) =>
    inFactors(`bandT60[${i}]`, hit.bandT60[i], t60, bandFactor(i, bands[i] ?? BAND_FLOOR)),
  ),
];

const nearest = (modes: readonly ModeFigure[], hz: number): ModeFigure | undefined =>
  [...modes].sort((a, b) => Math.abs(Math.log(a.hz / hz)) - Math.abs(Math.log(b.hz / hz)))[0];

const modeDeviations = (hit: HitFigures, { modes = [] }: HitTarget): Deviation[] =>
  modes
    .filter(({ db }) => db > MODE_FLOOR)
    .slice(0, MODES)
    .flatMap((target, i) => {
      const found = nearest(hit.modes, target.hz);
      return [
        ...inFactors(`modes[${i}].hz`, found?.hz, target.hz, FACTORS.modeHz),
        ...inDecibels(`modes[${i}].db`, found?.db, target.db, DECIBELS.modeDb),
        ...inFactors(`modes[${i}].t60`, found?.t60, target.t60, FACTORS.modeT60),
      ];
    });

/** Every figure that both have, compared. */
export const deviationsOf = (hit: HitFigures, target: HitTarget): readonly Deviation[] => [
  ...(['attack', 'timeToPeak', 't20', 't60', 't60Early', 't60Late'] as const).flatMap((name) =>
    inFactors(name, hit[name], target[name], FACTORS[name]),
  ),
  ...(['crest', 'flatness', 'tonalToNoise', 'loudness'] as const).flatMap((name) =>
    inDecibels(name, hit[name], target[name], DECIBELS[name]),
  ),
  ...(['centroid', 'body'] as const).flatMap((name) =>
    (target[name] ?? []).flatMap((value, i) =>
      inFactors(`${name}[${i}]`, hit[name][i], value, FACTORS[name]),
    ),
  ),
  ...bandDeviations(hit, target),
  ...modeDeviations(hit, target),
];

/** Mean size of deviations; a single one counts for 5 at most. */
export const meanDeviation = (deviations: readonly Deviation[]): number =>
  deviations.reduce((sum, { deviation }) => sum + Math.min(5, Math.abs(deviation)), 0) / deviations.length;
