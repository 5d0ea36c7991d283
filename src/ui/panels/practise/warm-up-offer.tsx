import { useMemo } from 'react';
import { warmUpSpec } from '../../../app/warm-up/warm-up-run';
import { secondsOf, WARM_UP_CAUTIONS, warmUpSteps } from '../../../core/practice/warm-up';
import { useSelected, useSession } from '../../state/session-context';
import { useInTurns } from '../../state/use-in-turns';

/** What its steps are; worked out after the panel is drawn, since their lines take longer to find than the panel does. */
const Steps = () => {
  const settings = useSelected((state) => state.settings);
  const tune = useSelected((state) => state.tune);
  const steps = useInTurns(useMemo(() => warmUpSteps(warmUpSpec({ settings, tune })), [settings, tune]));
  if (steps === null)
    return <p>A few minutes that run by themselves, for this harp and what you can play.</p>;
  return (
    <p>
      About {Math.round(secondsOf(steps) / 60)} minutes that run by themselves, for this harp and what you can
      play:{' '}
      {steps
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
