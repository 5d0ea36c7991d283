import { keyOfChorus } from '../../core/arranger/song-plan';
import { harpName } from '../../core/fit/advice-words';
import { harpFor } from '../../core/song/tune';
import { keyName, prettyName } from '../../core/theory/pitch';
import { useSelected } from '../state/session-context';

/** Bars before the change from which the announcement grows. */
const NEAR_BARS = 4;

/** The harp of the next chorus where the key moves: named a whole chorus ahead, and large before the change. */
export const NextHarpSign = () => {
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
  const near = now.formBar !== null && now.formBar >= own.bars.length - NEAR_BARS;
  const minor = own.mode === 'minor' ? ' minor' : '';
  return (
    <section
      className="turn next-harp"
      data-turn={near ? 'answer' : 'listen'}
      aria-label="Next harp"
      aria-live="polite"
    >
      <strong>{prettyName(harpName(harpFor(settings, key)))}</strong>
      <p>
        from the next chorus on: song in {prettyName(keyName(key, own.mode))}
        {minor}
      </p>
    </section>
  );
};
