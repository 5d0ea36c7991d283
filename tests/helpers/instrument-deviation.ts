/**
 * How far a note is from a measured one, in tolerances. Tolerances: times and frequencies within a factor, levels
 * within dB; about the scatter that the measured instruments show from key to key, and never finer than the ear.
 */
import type { NoteFigures } from './instrument-measure';

/** Figures of a measured note; what it leaves out is not compared. */
export type NoteTarget = Partial<NoteFigures>;

export interface NoteDeviation {
  readonly figure: string;
  readonly value: number;
  readonly target: number;
  /** In tolerances; 1 is the edge. */
  readonly deviation: number;
}

const FACTORS = {
  attack: 1.5,
  timeToPeak: 1.5,
  t20: 1.3,
  t60Late: 1.35,
  bandwidth20: 1.4,
  bandwidth40: 1.25,
  inharmonicity: 1.35,
};
const DECIBELS = { sustain500: 2, decayEarly: 4, hnr: 4, loudness: 1.2 };
const CENTROID_FACTORS: readonly number[] = [1.2, 1.15, 1.15, 1.2];
/** Harmonics 1–6 carry the tone; those above scatter more. Below the floor they count as equal. */
const STRONG_HARMONICS = 6;
const HARMONIC_DECIBELS = { harmonics100: { strong: 4, weak: 7 }, harmonics500: { strong: 5, weak: 9 } };
const HARMONIC_FLOOR = -60;

type Reading = number | null | undefined;

const inFactors = (figure: string, value: Reading, target: Reading, factor: number): NoteDeviation[] =>
  value && target ? [{ figure, value, target, deviation: Math.log(value / target) / Math.log(factor) }] : [];
const inDecibels = (figure: string, value: Reading, target: Reading, tolerance: number): NoteDeviation[] =>
  typeof value === 'number' && typeof target === 'number'
    ? [{ figure, value, target, deviation: (value - target) / tolerance }]
    : [];

const harmonicDeviations = (
  name: 'harmonics100' | 'harmonics500',
  note: NoteFigures,
  target: NoteTarget,
): NoteDeviation[] =>
  (target[name] ?? []).flatMap((level, i) => {
    const value = note[name][i];
    if (level === null || typeof value !== 'number') return [];
    const { strong, weak } = HARMONIC_DECIBELS[name];
    const [heard, wanted] = [Math.max(value, HARMONIC_FLOOR), Math.max(level, HARMONIC_FLOOR)];
    return inDecibels(`${name}[${i}]`, heard, wanted, i < STRONG_HARMONICS ? strong : weak);
  });

/** Every figure that both have, compared. */
export const deviationsOf = (note: NoteFigures, target: NoteTarget): readonly NoteDeviation[] => [
  ...(
    ['attack', 'timeToPeak', 't20', 't60Late', 'bandwidth20', 'bandwidth40', 'inharmonicity'] as const
  ).flatMap((name) => inFactors(name, note[name], target[name], FACTORS[name])),
  ...(['sustain500', 'decayEarly', 'hnr', 'loudness'] as const).flatMap((name) =>
    inDecibels(name, note[name], target[name], DECIBELS[name]),
  ),
  ...(target.centroid ?? []).flatMap((value, i) =>
    inFactors(`centroid[${i}]`, note.centroid[i], value, CENTROID_FACTORS[i] ?? 1.2),
  ),
  ...harmonicDeviations('harmonics100', note, target),
  ...harmonicDeviations('harmonics500', note, target),
];

/** Mean size of deviations; a single one counts for 5 at most. */
export const meanDeviation = (deviations: readonly NoteDeviation[]): number =>
  deviations.reduce((sum, { deviation }) => sum + Math.min(5, Math.abs(deviation)), 0) / deviations.length;
