import { useMemo } from 'react';
import { warmUpFor } from '../../../app/warm-up/warm-up-run';
import { useSelected, useSession } from '../../state/session-context';

/** What the warm-up would be for the harp in hand, with its cautions, and the way to start it. */
export const WarmUpOffer = ({ onStart }: { readonly onStart: () => void }) => {
  const { commands, store } = useSession();
  const settings = useSelected((state) => state.settings);
  const tune = useSelected((state) => state.tune);
  const running = useSelected((state) => state.warmUp !== null);
  const routine = useMemo(() => warmUpFor({ ...store.getState(), settings, tune }), [store, settings, tune]);
  return (
    <>
      <p>
        About {Math.round(routine.seconds / 60)} minutes that run by themselves, for this harp and what you
        can play:{' '}
        {routine.steps
          .filter(({ band }) => band !== null)
          .map(({ title }) => title.toLowerCase())
          .join(', ')}
        , with rests between.
      </p>
      <ul className="cautions">
        {routine.cautions.map((caution) => (
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
