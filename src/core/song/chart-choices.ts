import { type OwnChart, readOwnChart } from '../chart-text/own-chart';
import { FEELS, type FeelId } from '../feels/feels';
import type { Settings } from '../settings/settings';
import { TEMPO_RANGE } from '../settings/tempo';
import { pitchClassOf } from '../theory/pitch';
import { asBpm } from '../theory/units';
import { withFeel, withForm, withSongKey } from './key-coupling';

/** The feel of a name, small and large letters alike; null where there is none. */
const feelNamed = (name: string): FeelId | null =>
  FEELS.find((feel) => [feel.id, feel.name].some((each) => each.toLowerCase() === name.trim().toLowerCase()))
    ?.id ?? null;

/**
 * A chart of the player's own as the form, with what its text says of key, feel, tempo (within the program's range)
 * and a held last bar; what it does not say stays.
 */
export const withOwnChart = (settings: Settings, own: OwnChart): Settings => {
  const { says } = readOwnChart(own);
  const feel = says.feel === null ? null : feelNamed(says.feel);
  const formed = settings.formId === own.id ? settings : withForm(settings, own.id);
  const keyed = says.key === null ? formed : withSongKey(formed, pitchClassOf(says.key.tonic));
  const felt = feel === null || feel === keyed.style.feel ? keyed : withFeel(keyed, feel);
  const { low, high } = TEMPO_RANGE;
  const tempo = says.tempo === null ? felt.tempo : asBpm(Math.min(high, Math.max(low, says.tempo)));
  const plan = says.fermata ? { ...felt.plan, ending: 'held' as const } : felt.plan;
  return { ...felt, tempo, plan };
};
