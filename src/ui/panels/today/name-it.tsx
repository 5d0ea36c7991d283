import { useEffect, useState } from 'react';
import { DRILL_SECONDS, DRILLS, type Drill, drillQuestion } from '../../../core/practice/name-it';
import { Choice, optionsOf } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

const DRILL_OPTIONS = optionsOf(DRILLS, {
  holes: 'From the chord to the holes',
  degree: 'From the hole to the degree',
  change: 'What moves at a change',
});

interface Run {
  readonly drill: Drill;
  readonly seed: number;
  /** Number of the question, from 0. */
  readonly asked: number;
  readonly right: number;
  /** What was chosen of the present question; null before. */
  readonly chosen: number | null;
  readonly over: boolean;
}

/** The question that stands, its answers, and what came of the last press. */
const Asking = ({ run, onChange }: { readonly run: Run; readonly onChange: (run: Run) => void }) => {
  const { chart, fit } = useSelected((state) => state.tune);
  const tabStyle = useSelected((state) => state.settings.tabStyle);
  const { drill, seed, asked, chosen } = run;
  const names = useNames();
  const question = drillQuestion({ chart, fit, tabStyle, drill, seed }, asked);
  if (question === null)
    return <p className="hint">The song on the stand has nothing to ask here on this harp.</p>;
  const answer = (i: number): void =>
    onChange({ ...run, chosen: i, right: run.right + (i === question.right ? 1 : 0) });
  return (
    <>
      <p>
        <strong>{names.text(question.text)}</strong>
      </p>
      <div className="own-buttons">
        {question.answers.map((text, i) => (
          <button
            key={text}
            type="button"
            className="tool"
            disabled={chosen !== null}
            aria-pressed={chosen === i}
            onClick={() => answer(i)}
          >
            {chosen !== null && i === question.right && <span aria-hidden="true">✓ </span>}
            {text}
          </button>
        ))}
      </div>
      <p role="status">
        {chosen !== null &&
          (chosen === question.right
            ? 'Yes.'
            : `It is ${question.answers[question.right] ?? ''}. Play it once.`)}
      </p>
      {chosen !== null && (
        <button
          type="button"
          className="tool"
          onClick={() => onChange({ ...run, asked: asked + 1, chosen: null })}
        >
          Next question
        </button>
      )}
    </>
  );
};

const answered = ({ asked, chosen }: Run): number => asked + (chosen === null ? 0 : 1);

/** Two minutes of naming over the song on the stand. */
export const NameIt = () => {
  const { commands } = useSession();
  const [drill, setDrill] = useState<Drill>('holes');
  const [run, setRun] = useState<Run | null>(null);
  const running = run !== null && !run.over;
  useEffect(() => {
    if (!running) return;
    const timer = setTimeout(() => setRun((now) => now && { ...now, over: true }), DRILL_SECONDS * 1000);
    return () => clearTimeout(timer);
  }, [running]);
  const end = (): void => setRun((now) => now && { ...now, over: true });
  const over = run?.over === true ? run : null;
  useEffect(() => {
    if (over !== null && answered(over) > 0)
      commands.noteDrill({ name: over.drill, tries: answered(over), passed: over.right });
  }, [over, commands]);
  if (run !== null && running)
    return (
      <>
        <Asking run={run} onChange={setRun} />
        <button type="button" className="plain" onClick={end}>
          End
        </button>
      </>
    );
  return (
    <>
      {over !== null && (
        <p role="status">
          {over.right} of {answered(over)}. Enough for now: play a chorus and look for them.
        </p>
      )}
      <Choice label="What is asked" value={drill} options={DRILL_OPTIONS} onChoose={setDrill} />
      <button
        type="button"
        className="tool"
        onClick={(event) =>
          setRun({
            drill,
            seed: Math.round(event.timeStamp),
            asked: 0,
            right: 0,
            chosen: null,
            over: false,
          })
        }
      >
        Begin two minutes
      </button>
    </>
  );
};
