import { SELF_MARKS } from '../../core/today/grade';
import { stepWords } from '../../core/today/step-words';
import { useSelected, useSession } from '../state/session-context';
import { useNames } from '../state/use-names';
import { SELF_MARK_SIGNS } from './self-mark-signs';

const minutes = (seconds: number): string =>
  seconds < 90 ? `${seconds} seconds` : `${Math.round(seconds / 30) / 2} minutes`;

/** Where today is: what to do, how it was, and the ways on. */
export const TodaySign = () => {
  const { commands } = useSession();
  const names = useNames();
  const run = useSelected((state) => state.today.run);
  const step = run?.steps[run.index];
  if (run === null || step === undefined) return null;
  const { title, words } = stepWords(step, names);
  const item = step.kind === 'due' || step.kind === 'new';
  return (
    <section className="chorus-marks card" aria-label="Today">
      <p aria-live="polite">
        <b>
          Today, {run.index + 1} of {run.steps.length}: {title}.
        </b>{' '}
        {run.over && item ? 'The time is over: how was it?' : `${words} About ${minutes(step.seconds)}.`}
      </p>
      {item && (
        <fieldset className="self-marks">
          <legend className="unseen">How was it?</legend>
          {SELF_MARKS.map((mark) => (
            <button
              key={mark}
              type="button"
              className="tool"
              aria-pressed={run.marked === mark}
              onClick={() => commands.markToday(mark)}
            >
              <span aria-hidden="true">{SELF_MARK_SIGNS[mark].sign}</span> {SELF_MARK_SIGNS[mark].text}
            </button>
          ))}
        </fieldset>
      )}
      <div className="row">
        <button type="button" className="tool" onClick={commands.nextToday}>
          {run.index + 1 < run.steps.length ? 'Go on' : 'Finish'}
        </button>
        <button type="button" className="tool" onClick={commands.endToday}>
          End for today
        </button>
      </div>
    </section>
  );
};
