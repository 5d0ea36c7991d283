import { useEffect } from 'react';
import { WARM_UP_CAUTIONS } from '../../../core/practice/warm-up';
import { stepWords } from '../../../core/today/step-words';
import { TODAY_MINUTES } from '../../../core/today/today-plan';
import { Choice } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { UndoRow } from '../../controls/undo-row';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { NameIt } from './name-it';
import { Stations } from './stations';
import './today.css';

const OPTIONS = TODAY_MINUTES.map((value) => ({ value, text: `${value} minutes` }));

const Steps = () => {
  const plan = useSelected((state) => state.today.plan);
  const names = useNames();
  if (plan.length === 0) return <p>One moment: it is being worked out.</p>;
  return (
    <ol className="today-steps">
      {plan.map((step, i) => (
        <li
          // biome-ignore lint/suspicious/noArrayIndexKey: a step is known by its place
          key={i}
        >
          <strong>{stepWords(step, names).title}</strong>, {Math.round(step.seconds / 30) / 2} min
        </li>
      ))}
    </ol>
  );
};

/** What is known of what was practised, each to be forgotten. */
const Known = () => {
  const { commands } = useSession();
  const items = useSelected((state) => state.today.items);
  if (items.length === 0)
    return <p className="hint">Nothing yet. What you have marked once comes back when it is due.</p>;
  return (
    <>
      <ul className="rows">
        {items.map(({ id, name, memory }) => (
          <li key={id} className="row">
            <span>
              {name}
              {memory !== null && `, ${memory.times === 1 ? 'once' : `${memory.times} times`}`}
            </span>
            <button
              type="button"
              className="plain"
              aria-label={`Forget ${name}`}
              onClick={() => commands.forgetPractice(id)}
            >
              Forget
            </button>
          </li>
        ))}
      </ul>
      <button type="button" className="tool" onClick={() => commands.forgetPractice(null)}>
        Forget all of it
      </button>
    </>
  );
};

/** What to practise today, and the way to begin it. */
export const TodayPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const minutes = useSelected((state) => state.today.minutes);
  const running = useSelected((state) => state.today.run !== null);
  useEffect(() => void commands.findToday(minutes), [commands, minutes]);
  return (
    <Panel title="Today" onClose={onClose}>
      <section className="group">
        <p>
          A warm-up, what is due, one new thing and a song for joy. It leads you through on the stand. With
          the microphone on it hears how it went; without it you say so.
        </p>
        <Choice
          label="Time"
          value={minutes}
          options={OPTIONS}
          onChoose={(chosen) => void commands.findToday(chosen)}
        />
        <Steps />
        <button
          type="button"
          className="tool"
          onClick={() => {
            commands.startToday();
            onClose();
          }}
        >
          {running ? 'Begin again' : 'Begin'}
        </button>
        <ul className="cautions">
          {WARM_UP_CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <Fold title="Name it, two minutes">
        <NameIt />
      </Fold>
      <Fold title="First steps">
        <Stations onStart={onClose} />
      </Fold>
      <Fold title="What comes back">
        <p className="hint">
          Each thing comes back after some days: sooner where it did not go well, later where it did, by a
          published method (FSRS-6) that was made for facts. A skill is never left for more than two weeks
          while it is new, and six weeks later on.
        </p>
        <Known />
      </Fold>
      <UndoRow />
    </Panel>
  );
};
