import type { WarmUpState } from '../../app/warm-up/warm-up-state';
import type { BarRange } from '../../core/chart/chart';
import { Tap } from '../controls/tap';
import { useSelected, useSession } from '../state/session-context';
import { TurnRing } from './turn-ring';

const minutes = (seconds: number): string =>
  seconds < 60 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 6) / 10} min`;

/** The bars of the pass being heard that the cue holds for; null before the first and while resting. */
const spanOf = ({ step, cue }: WarmUpState, pass: number): BarRange | null => {
  if (cue === null || step.band === null) return null;
  const bars = step.band.chart.bars.length;
  const next = step.cues.find(({ bar }) => bar > cue.bar)?.bar ?? Number.POSITIVE_INFINITY;
  return { from: Math.max(0, cue.bar - pass * bars), to: Math.min(bars, next - pass * bars) - 1 };
};

/** What the warm-up asks for now, readable from the stand: one word, and the one note by itself. */
const WarmUpAsks = ({ warmUp }: { readonly warmUp: WarmUpState }) => {
  const pass = useSelected((state) => state.now.chorus);
  const { step, cue } = warmUp;
  const span = spanOf(warmUp, pass);
  return (
    <>
      {span !== null && <TurnRing span={span} />}
      <strong aria-live="polite">
        {cue?.word ?? step.title}
        {cue?.sound && (
          <b className="asked">
            <Tap sound={cue.sound} />
          </b>
        )}
      </strong>
    </>
  );
};

/** The warm-up's sign: what it asks for, where it is, and the ways on. */
export const WarmUpSign = () => {
  const { commands } = useSession();
  const warmUp = useSelected((state) => state.warmUp);
  if (warmUp === null) return null;
  const { step, number, of } = warmUp;
  return (
    <section className="turn warm-up" data-turn={step.band === null ? 'rest' : 'listen'} aria-label="Warm-up">
      <WarmUpAsks warmUp={warmUp} />
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
