import { CALL_LEVELS, LEVEL_WORDS } from '../../../core/practice/call-levels';
import {
  ANSWER_VOICES,
  type AnswerVoice,
  TRADE_MODES,
  type TradeMode,
} from '../../../core/practice/trade-modes';
import { PLAN_LIMITS, readPlan, TRADE_PLANS } from '../../../core/practice/trade-plan';
import {
  AFTER_ANSWERS,
  type AfterAnswer,
  type PartnerChoice,
} from '../../../core/settings/practice-settings';
import { Choice, optionsOf } from '../../controls/choice';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

const MODE_WORDS: Readonly<Record<TradeMode, string>> = {
  echo: 'Echo: the same again',
  answer: 'Answer: something of your own',
  lead: 'Lead: you call, the band answers',
};

const MODE_HINTS: Readonly<Record<TradeMode, string>> = {
  echo: 'With the microphone on, or on a keyboard (MIDI), each answer is heard against its call.',
  answer: 'Heard for where it lands, the space it leaves, and what it takes up of the call.',
  lead: 'Switch the microphone on, or play on a keyboard (MIDI): what you call comes back with another end.',
};

const VOICE_WORDS: Readonly<Record<AnswerVoice, string>> = {
  harp: 'The harp voice',
  piano: 'The chord player: the piano',
};

const AFTER_WORDS: Readonly<Record<AfterAnswer, string>> = {
  on: 'Go on to the next call',
  clean: 'Repeat the call until it is clean',
  slower: 'Repeat it, a little slower each time',
};

const PLAN_WORDS: Readonly<Record<(typeof TRADE_PLANS)[number], string>> = {
  '1+1': '1 bar, 1 bar',
  '2+2': '2 bars, 2 bars',
  '4+4': '4 bars, 4 bars',
  chorus: 'A chorus each',
};

/** The choice for a list of one's own. */
const LIST = 'list';

/** A list that differs from every named plan, to begin with. */
const FIRST_LIST = '2+2 1+1 1+1';

/** How long calls and answers are: a plan by name, or a list of one's own. */
const PlanChoice = ({
  plan,
  onChange,
}: {
  readonly plan: string;
  readonly onChange: (plan: string) => void;
}) => {
  const named = TRADE_PLANS.find((each) => each === plan);
  const { problem } = readPlan(plan);
  const options = [
    ...TRADE_PLANS.map((value) => ({ value: String(value), text: PLAN_WORDS[value] })),
    { value: LIST, text: 'A list of your own' },
  ];
  return (
    <>
      <Choice
        label="Call and answer in turn"
        value={named ?? LIST}
        options={options}
        onChoose={(value) => onChange(value === LIST ? FIRST_LIST : value)}
      />
      {named === undefined && (
        <label className="field">
          <span className="label">Bars of call + bars of answer, one after the other</span>
          <input
            className="text-box"
            type="text"
            maxLength={PLAN_LIMITS.text}
            spellCheck={false}
            value={plan}
            aria-invalid={problem !== null}
            onChange={(event) => onChange(event.target.value)}
          />
          {problem !== null && (
            <span className="hint" role="status">
              {problem}
            </span>
          )}
        </label>
      )}
    </>
  );
};

/** The partner: what is traded, how long, how hard, and what comes after an answer. */
export const PartnerChoices = () => {
  const { commands } = useSession();
  const partner = useSelected((state) => state.settings.partner);
  const set = (change: Partial<PartnerChoice>): void =>
    commands.choose({ partner: { ...partner, ...change } });
  const levels = CALL_LEVELS.map((value) => ({ value, text: LEVEL_WORDS[value] }));
  return (
    <>
      <Choice
        label="What you do"
        value={partner.mode}
        options={optionsOf(TRADE_MODES, MODE_WORDS)}
        hint={MODE_HINTS[partner.mode]}
        onChoose={(mode) => set({ mode })}
      />
      <PlanChoice plan={partner.plan} onChange={(plan) => set({ plan })} />
      {partner.mode === 'lead' && (
        <Choice
          label="Who answers"
          value={partner.voice}
          options={optionsOf(ANSWER_VOICES, VOICE_WORDS)}
          hint="The chord player answers on what it has under Band: piano, organ or guitar."
          onChoose={(voice) => set({ voice })}
        />
      )}
      {partner.mode !== 'lead' && (
        <>
          <Choice label="Level" value={partner.level} options={levels} onChoose={(level) => set({ level })} />
          <Choice
            label="After your answer"
            value={partner.after}
            options={optionsOf(AFTER_ANSWERS, AFTER_WORDS)}
            onChoose={(after) => set({ after })}
          />
          <Switch
            label="Calls may ask for more than you have switched on"
            on={partner.stretch}
            hint="Bends and overbends that are off under Harp come up too."
            onChange={(stretch) => set({ stretch })}
          />
        </>
      )}
    </>
  );
};
