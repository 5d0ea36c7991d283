/** Choices that can be undone: each step is what changed, so that undoing one leaves what came in otherwise. */
import { choiceName } from './choice-name';
import type { ChoiceHistory } from './choice-steps';
import { mergeSettings } from './merge-settings';
import type { Settings } from './settings';

/** Steps kept; older ones are forgotten. */
const MOST_CHOICES = 200;

/**
 * The history with one more choice; what was undone is forgotten.
 * @param joins whether a choice of the same thing goes on where the last one stopped, as while a slider is dragged.
 */
export const recordChoice = (
  { past, future }: ChoiceHistory,
  from: Settings,
  to: Settings,
  joins: boolean,
): ChoiceHistory => {
  const name = choiceName(from, to);
  if (name === '') return { past, future };
  const last = past.at(-1);
  if (!joins || last?.name !== name)
    return { past: [...past, { name, from, to }].slice(-MOST_CHOICES), future: [] };
  const before = past.slice(0, -1);
  const whole = choiceName(last.from, to);
  return { past: whole === '' ? before : [...before, { name: whole, from: last.from, to }], future: [] };
};

/** Settings and history after a step was taken back or again, and the name of what it was. */
export interface ChoiceTaken {
  readonly history: ChoiceHistory;
  readonly settings: Settings;
  readonly name: string;
}

/** Takes the last choice back, whatever else the settings are now; null where there is none. */
export const undoChoice = ({ past, future }: ChoiceHistory, now: Settings): ChoiceTaken | null => {
  const step = past.at(-1);
  if (step === undefined) return null;
  return {
    history: { past: past.slice(0, -1), future: [step, ...future] },
    settings: mergeSettings(step.to, step.from, now),
    name: step.name,
  };
};

/** Makes the choice taken back last again; null where there is none. */
export const redoChoice = ({ past, future }: ChoiceHistory, now: Settings): ChoiceTaken | null => {
  const [step, ...rest] = future;
  if (step === undefined) return null;
  return {
    history: { past: [...past, step], future: rest },
    settings: mergeSettings(step.from, step.to, now),
    name: step.name,
  };
};
