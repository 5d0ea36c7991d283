import { useDeferredValue, useMemo } from 'react';
import { warmUpFor } from '../../../app/warm-up/warm-up-run';
import { WARM_UP_CAUTIONS } from '../../../core/practice/warm-up';
import { useSelected, useSession } from '../../state/session-context';

/** What its steps are; worked out after the panel is drawn, since their lines take longer to find than the panel does. */
const Steps = () => {
  const { store } = useSession();
  const settings = useDeferredValue(
    useSelected((state) => state.settings),
    null,
  );
  const tune = useDeferredValue(useSelected((state) => state.tune));
  const routine = useMemo(
    () => (settings === null ? null : warmUpFor({ ...store.getState(), settings, tune })),
    [store, settings, tune],
  );
  if (routine === null) return <p>Minutes that run by themselves, for this harp and what you can play.</p>;
  return (
    <p>
      About {Math.round(routine.seconds / 60)} minutes that run by themselves, for this harp and what you can
      play:{' '}
      {routine.steps
        .filter(({ band }) => band !== null)
        .map(({ title }) => title.toLowerCase())
        .join(', ')}
      , with rests between.
    </p>
  );
};

/** What the warm-up would be for the harp in hand, with its cautions, and the way to start it. */
export const WarmUpOffer = ({ onStart }: { readonly onStart: () => void }) => {
  const { commands } = useSession();
  const running = useSelected((state) => state.warmUp !== null);
  return (
    <>
      <Steps />
      <ul className="cautions">
        {WARM_UP_CAUTIONS.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      <button
        type="button"
        className="tool"
        onClick={() => {
          commands.startWarmUp();
          onStart();
        }}
      >
        {running ? 'Start the warm-up again' : 'Start the warm-up'}
      </button>
    </>
  );
};
