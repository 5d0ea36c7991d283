import { keyOfChorus } from '../../core/arranger/song-plan';
import { harpName } from '../../core/fit/advice-words';
import { harpFor } from '../../core/song/tune';
import { keyName } from '../../core/theory/pitch';
import { useSelected } from './session-context';
import { useNames } from './use-names';

/** Bars before the change from which it is announced large. */
const NEAR_BARS = 4;

/** The harp to pick up for the next chorus. */
export interface NextHarp {
  /** `F harp`. */
  readonly name: string;
  /** The song's key from there on: `C`, `C minor`. */
  readonly songKey: string;
  /** Whether the change is a few bars away. */
  readonly near: boolean;
}

/** The harp of the next chorus where the key moves; null where the harp stays. */
export const useNextHarp = (): NextHarp | null => {
  const names = useNames();
  const playing = useSelected((state) => state.status.kind === 'playing' && state.warmUp === null);
  const now = useSelected((state) => state.now);
  const own = useSelected((state) => state.tune.chart);
  const settings = useSelected((state) => state.settings);
  if (!playing || settings.plan.keys.kind === 'same') return null;
  const ahead = now.kind === 'chorus' ? now.chorus + 1 : now.chorus;
  const { choruses } = settings.plan;
  if (choruses !== null && ahead >= choruses) return null;
  const key = keyOfChorus(own, settings.plan, ahead);
  if (key === now.tune.chart.key) return null;
  return {
    name: names.key(harpName(harpFor(settings, key))),
    songKey: names.key(`${keyName(key, own.mode)}${own.mode === 'minor' ? ' minor' : ''}`),
    near: now.formBar !== null && now.formBar >= own.bars.length - NEAR_BARS,
  };
};
