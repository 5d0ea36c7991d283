import { useSelected, useSession } from '../state/session-context';

const minutes = (seconds: number): string =>
  seconds < 60 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 6) / 10} min`;

/** What the warm-up asks for now, readable from the stand. */
export const WarmUpSign = () => {
  const { commands } = useSession();
  const warmUp = useSelected((state) => state.warmUp);
  if (warmUp === null) return null;
  const { step, number, of, cue } = warmUp;
  return (
    <section className="turn warm-up" data-turn={step.band === null ? 'rest' : 'listen'} aria-label="Warm-up">
      <strong aria-live="polite">{cue || step.title}</strong>
      <div>
        <p>
          Step {number} of {of}, {minutes(step.seconds)}: {step.title}. {step.instruction}
        </p>
        <div className="row">
          <button type="button" className="tool" onClick={commands.skipWarmUpStep}>
            Next step
          </button>
          <button type="button" className="tool" onClick={commands.endWarmUp}>
            End the warm-up
          </button>
        </div>
      </div>
    </section>
  );
};
