import { useState } from 'react';
import type { BendPractice } from '../../../app/bends/bend-practice';
import { BEND_LEADS, BEND_LEVELS, type BendLead, type BendLevel } from '../../../core/bends/bend-choice';
import { type Exercise, exercisesFor, TOLERANCE } from '../../../core/bends/bend-exercise';
import { bendTargets } from '../../../core/bends/bend-targets';
import { EXERCISE_WORDS, FIRST_BEND } from '../../../core/bends/bend-words';
import type { Sound } from '../../../core/harp/harp';
import { soundId, spokenHole, tab } from '../../../core/harp/tab';
import { WARM_UP_CAUTIONS } from '../../../core/practice/warm-up';
import { Choice, optionsOf } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { useSelected, useSession } from '../../state/session-context';
import { useBendPractice } from '../../state/use-bend-practice';
import { BendTurnView } from './bend-turn-view';
import { ReachTable } from './reach-table';
import { useBendResults } from './use-bend-results';

/** The value of sounds that are given. */
const GIVEN = '';

const LEVELS: Readonly<Record<BendLevel, string>> = {
  first: `First contact: ${TOLERANCE.first} cents either way`,
  developing: `Developing: ${TOLERANCE.developing} cents`,
  secure: `Secure: ${TOLERANCE.secure} cents`,
  expert: `Expert: ${TOLERANCE.expert} cents, as fine as ears go`,
};

const LEADS: Readonly<Record<BendLead, string>> = {
  tone: 'The sound itself',
  drone: 'A drone an octave below, going on',
  nothing: 'Nothing: from memory',
};

/** Dips in a row after which the pitch can be gone for (by design, no source). */
const DIPS = 3;

interface Chosen {
  readonly target: string;
  readonly exercise: Exercise;
}

interface PartProps {
  readonly practice: BendPractice;
  readonly chosen: Chosen;
  readonly onChoose: (chosen: Chosen) => void;
}

/** The sound that is chosen, or would be given. */
const useTarget = (practice: BendPractice, chosen: Chosen): Sound | null => {
  const harp = useSelected((state) => state.tune.harp);
  return harp.sounds.find((sound) => soundId(sound) === chosen.target) ?? practice.next(null);
};

const Choices = ({ practice, chosen, onChoose }: PartProps) => {
  const { commands } = useSession();
  const harp = useSelected((state) => state.tune.harp);
  const bends = useSelected((state) => state.settings.bends);
  const style = useSelected((state) => state.settings.tabStyle);
  const target = useTarget(practice, chosen);
  const targets = bendTargets(harp).map((sound) => ({
    value: soundId(sound),
    text: `${tab(sound, style)}: ${spokenHole(sound)}`,
  }));
  const exercises = target === null ? [] : exercisesFor(target);
  return (
    <>
      <Choice
        label="Sound"
        value={targets.some(({ value }) => value === chosen.target) ? chosen.target : GIVEN}
        options={[{ value: GIVEN, text: 'Given to me, in an order that teaches' }, ...targets]}
        size="long"
        onChoose={(id) => onChoose({ ...chosen, target: id })}
      />
      <Choice
        label="Exercise"
        value={exercises.includes(chosen.exercise) ? chosen.exercise : 'hold'}
        options={exercises.map((each) => ({ value: each, text: EXERCISE_WORDS[each].name }))}
        onChoose={(exercise) => onChoose({ ...chosen, exercise })}
      />
      <Choice
        label="What counts as right"
        value={bends.level}
        options={optionsOf(BEND_LEVELS, LEVELS)}
        size="long"
        onChoose={(level) => commands.choose({ bends: { ...bends, level } })}
      />
      <Choice
        label="Before each try"
        value={bends.lead}
        options={optionsOf(BEND_LEADS, LEADS)}
        size="long"
        onChoose={(lead) => commands.choose({ bends: { ...bends, lead } })}
      />
    </>
  );
};

const Practice = ({ practice, chosen, onChoose }: PartProps) => {
  const { commands } = useSession();
  const turn = useSelected((state) => state.bends.turn);
  const ended = useSelected((state) => state.bends.ended);
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  const target = useTarget(practice, chosen);
  const results = useBendResults();
  if (target === null) return <p>This harp has neither bends nor overbends.</p>;
  const exercise = exercisesFor(target).includes(chosen.exercise) ? chosen.exercise : 'hold';
  const dips = results.get(soundId(turn?.target ?? target))?.tries.slice(-DIPS) ?? [];
  const dipped = dips.length === DIPS && dips.every((each) => each.exercise === 'dip' && each.hit);
  const begin = (): void => practice.start({ target, exercise, given: chosen.target === GIVEN });
  return (
    <>
      <BendTurnView practice={practice} turn={turn ?? { target, exercise }} />
      <div className="save-row">
        <button type="button" className="tool" onClick={turn === null ? begin : practice.stop}>
          {turn === null ? 'Start' : 'Stop'}
        </button>
        <button type="button" className="tool" onClick={() => commands.listen((turn ?? { target }).target)}>
          Hear it
        </button>
        {!listening && (
          <button type="button" className="tool" onClick={() => void commands.listenToMe()}>
            Listen to me
          </button>
        )}
      </div>
      <p className="hint" role="status">
        {ended || (!listening && 'Without the microphone you say yourself whether it came.')}
      </p>
      {dipped && (
        <p>
          It dips every time.{' '}
          <button
            type="button"
            className="tool"
            onClick={() => {
              practice.stop();
              onChoose({ ...chosen, exercise: 'hold' });
            }}
          >
            Go for the pitch
          </button>
        </p>
      )}
    </>
  );
};

/** A first bend: what to try with the mouth, any dip counts, nothing is forced. */
const FirstBend = ({ chosen, onChoose }: PartProps) => {
  const { commands } = useSession();
  const bends = useSelected((state) => state.settings.bends);
  const harp = useSelected((state) => state.tune.harp);
  const [first] = bendTargets(harp).filter(({ technique }) => technique === 'bend');
  return (
    <>
      <ol className="cautions">
        {FIRST_BEND.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
      <p className="hint">
        Common practice among teachers, no more. A first bend takes a week or many months; rest after some
        minutes. {WARM_UP_CAUTIONS[0]}
      </p>
      {first !== undefined && (
        <button
          type="button"
          className="tool"
          onClick={({ currentTarget }) => {
            // What it asks for stands at the top.
            const body = currentTarget.closest('.panel-body');
            if (body !== null) body.scrollTop = 0;
            commands.choose({ bends: { ...bends, level: 'first' } });
            onChoose({ ...chosen, target: soundId(first), exercise: 'dip' });
          }}
        >
          Begin with {spokenHole(first)}, any dip counts
        </button>
      )}
    </>
  );
};

/** Bends and overbends one by one: heard or marked, with what is kept of them. */
export const BendsPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const practice = useBendPractice();
  const [chosen, setChosen] = useState<Chosen>({ target: GIVEN, exercise: 'hold' });
  const choose = (next: Chosen): void => {
    practice?.stop();
    setChosen(next);
  };
  return (
    <Panel title="Bends" onClose={onClose}>
      {practice !== null && (
        <>
          <Practice practice={practice} chosen={chosen} onChoose={choose} />
          <Fold title="What is practised" open>
            <Choices practice={practice} chosen={chosen} onChoose={choose} />
          </Fold>
          <Fold title="A first bend">
            <FirstBend practice={practice} chosen={chosen} onChoose={choose} />
          </Fold>
          <Fold title="What you can reach" open>
            <ReachTable practice={practice} />
          </Fold>
        </>
      )}
    </Panel>
  );
};
