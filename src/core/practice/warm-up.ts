import { asBpm, asSeconds, type Seconds } from '../theory/units';
import { bendStep } from './warm-up-bends';
import { climbStep, restStep, tradingStep } from './warm-up-chorus';
import type { WarmUp, WarmUpSpec, WarmUpStep } from './warm-up-step';
import { longToneStep } from './warm-up-tones';

/** A moderate tempo for tired or cold lips, whatever the song's (common practice, no source). */
export const CALM = { slowest: 50, fastest: 110 } as const;

/** Short and calm; a doctor or teacher knows more than a program does. */
export const WARM_UP_CAUTIONS: readonly string[] = [
  'Stop and breathe normally if you feel light-headed, and wait until it has passed.',
  'Never force a reed: a bend comes from the shape of the mouth, not from more air.',
  'Keep the band at a level at which you could still talk over it.',
  'If playing hurts or worries you, ask a doctor or a teacher before going on.',
];

/** The steps of a warm-up in their order, each made when it is asked for: some look for a line, which takes a while. */
export const warmUpSteps = (spec: WarmUpSpec): readonly (() => WarmUpStep)[] => {
  const tempo = asBpm(Math.min(CALM.fastest, Math.max(CALM.slowest, spec.tempo)));
  const calm: WarmUpSpec = { ...spec, tempo };
  return [
    () =>
      restStep(calm, 30, {
        title: 'Breathe',
        instruction: 'Put the harp down. Breathe in and out slowly through the nose, shoulders low.',
      }),
    () => longToneStep(calm),
    () => restStep(calm, 15),
    () => climbStep(calm),
    () => restStep(calm, 15),
    () => bendStep(calm),
    () => restStep(calm, 20),
    () => tradingStep(calm),
    () =>
      restStep(calm, 20, {
        title: 'Done',
        instruction: 'Tap the harp dry, holes down, and let it rest a moment before you play on.',
      }),
  ];
};

/** Seconds that steps take together. */
export const secondsOf = (steps: readonly WarmUpStep[]): Seconds =>
  asSeconds(steps.reduce((sum, { seconds }) => sum + seconds, 0));

/**
 * Five to ten minutes that run by themselves with the band, rests included: breathing, long tones, chord-tone climbs
 * through the changes, each bend against a held chord, a chorus of trading. The order is the one teachers converge on
 * (common practice, no source). Works for any chart, harp, technique and tempo; without bends in reach, soft starts
 * take their place.
 */
export const warmUp = (spec: WarmUpSpec): WarmUp => {
  const steps = warmUpSteps(spec).map((make) => make());
  return { steps, seconds: secondsOf(steps), cautions: WARM_UP_CAUTIONS };
};
