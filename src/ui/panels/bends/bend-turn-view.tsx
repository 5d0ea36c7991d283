import { useEffect, useRef } from 'react';
import type { BendPractice } from '../../../app/bends/bend-practice';
import { taskOf } from '../../../app/bends/bend-turns';
import type { BendTurn } from '../../../app/bends/bends-state';
import { EXERCISE_WORDS, verdictWords } from '../../../core/bends/bend-words';
import { spokenTab, tab } from '../../../core/harp/tab';
import { spelledPitch } from '../../../core/theory/pitch';
import { plainName } from '../../../core/theory/spelling';
import { useSelected } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { BendGauge } from './bend-gauge';

const STEPS: Readonly<Record<BendTurn['step'], string>> = {
  lead: 'Listen',
  yours: 'Your turn',
  mark: 'Your turn',
  verdict: '',
};

/** Asks the player for a word, where nothing is heard. */
const OwnMark = ({ practice }: { readonly practice: BendPractice }) => (
  <>
    <p>Play it, then say how it was.</p>
    <div className="save-row">
      <button type="button" className="tool" onClick={() => practice.mark(true)}>
        It came
      </button>
      <button type="button" className="tool" onClick={() => practice.mark(false)}>
        Not yet
      </button>
    </div>
  </>
);

interface Props {
  readonly practice: BendPractice;
  /** The turn under way, or the one that would begin. */
  readonly turn: Pick<BendTurn, 'target' | 'exercise'> & Partial<BendTurn>;
}

/** What is aimed at and what came of it, large enough for two metres. */
export const BendTurnView = ({ practice, turn }: Props) => {
  const settings = useSelected((state) => state.settings);
  const tune = useSelected((state) => state.tune);
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  const task = taskOf({ settings, tune }, turn);
  const { target, exercise, step, verdict } = turn;
  const view = useRef<HTMLDivElement>(null);
  const under = step !== undefined;
  // Where there is little height, Start stands below what is aimed at: that is what is read from then on.
  useEffect(() => {
    if (under) view.current?.closest('.panel-body')?.scrollTo({ top: 0 });
  }, [under]);
  const note = useNames().pitch(spelledPitch(target.pitch, plainName(target.pitch, tune.chart.tonic)));
  const words = verdict == null ? null : verdictWords(task, verdict);
  const hit = verdict?.kind === 'right' || (verdict != null && 'blue' in verdict && verdict.blue !== null);
  return (
    <div className="bend-turn" data-under={under} ref={view}>
      <BendGauge
        task={task}
        live={listening}
        stood={verdict != null && 'cents' in verdict ? verdict.cents : null}
      />
      <div className="bend-say">
        <p className="bend-target">
          <b aria-hidden="true">{tab(target, settings.tabStyle)}</b>
          <span className="unseen">{spokenTab(target)}</span> <span>{note}</span>
        </p>
        <p className="bend-step" data-step={step}>
          {step === undefined ? EXERCISE_WORDS[exercise].name : STEPS[step] || (words?.short ?? 'Noted')}
        </p>
        <p className="bend-short" data-hit={hit} aria-hidden="true">
          {step !== 'verdict' && words !== null && `${hit ? '✓ ' : ''}${words.short}`}
        </p>
      </div>
      <p className="bend-how">{EXERCISE_WORDS[exercise].how}</p>
      <p className="bend-words" role="status">
        {words !== null && `${words.happened} ${words.next}`}
      </p>
      {step === 'mark' && <OwnMark practice={practice} />}
    </div>
  );
};
