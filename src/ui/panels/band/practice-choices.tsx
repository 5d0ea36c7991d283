import type { Plan } from '../../../core/arranger/program';
import { CLICKS } from '../../../core/players/click';
import { SOUNDINGS } from '../../../core/score/soundings';
import { Choice, optionsOf } from '../../controls/choice';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';
import { usePlan } from '../../state/use-plan';

const SOUNDING_OPTIONS = optionsOf(SOUNDINGS, {
  band: 'The whole band',
  drums: 'Drums only',
  bass: 'Bass only',
  click: 'Click only',
});

const CLICK_OPTIONS = optionsOf(CLICKS, {
  'every beat': 'On every beat',
  'two and four': 'On 2 and 4',
  four: 'On the last beat only',
  'every other bar': 'On 1 of every other bar',
});

const DROP_OUTS = [
  { value: 'off', text: 'Never' },
  { value: '3/1', text: '1 bar in 4' },
  { value: '2/2', text: '2 bars in 4' },
  { value: '4/4', text: '4 bars in 8' },
  { value: '8/4', text: '4 bars in 12' },
] as const;

const dropOutOf = (value: string): Plan['dropOut'] => {
  const [play, rest] = value.split('/').map(Number);
  return play !== undefined && rest !== undefined ? { play, rest } : null;
};

const RepeatRange = () => {
  const { commands } = useSession();
  const [plan, change] = usePlan();
  const bars = useSelected((state) => state.tune.chart.bars.length);
  const cursor = useSelected((state) => state.now.formBar ?? 0);
  const range = plan.repeat;
  const numbers = Array.from({ length: bars }, (_, i) => ({ value: i, text: `Bar ${i + 1}` }));
  return (
    <fieldset className="group">
      <legend>Repeat</legend>
      <Switch
        label="Repeat a few bars"
        on={range !== null}
        hint="Or drag over the bars of the chart, or shift-click one. On a touch screen rest a finger on one end and tap the other."
        onChange={(on) => commands.repeat(on ? { from: cursor, to: Math.min(cursor + 3, bars - 1) } : null)}
      />
      {range !== null && (
        <>
          <div className="pair">
            <Choice
              label="From"
              value={range.from}
              options={numbers}
              onChoose={(from) => commands.repeat({ from, to: Math.max(from, range.to) })}
            />
            <Choice
              label="To"
              value={range.to}
              options={numbers}
              onChoose={(to) => commands.repeat({ from: Math.min(range.from, to), to })}
            />
          </div>
          <Switch
            label="Count a bar between"
            on={plan.countBetween}
            onChange={(countBetween) => change({ countBetween })}
          />
        </>
      )}
    </fieldset>
  );
};

/** What is heard while practising: all or part of the band, over some or all of the bars. */
export const PracticeChoices = () => {
  const [plan, change] = usePlan();
  const dropOut = plan.dropOut === null ? 'off' : `${plan.dropOut.play}/${plan.dropOut.rest}`;
  return (
    <>
      <fieldset className="group">
        <legend>What plays</legend>
        <Choice
          label="Parts"
          value={plan.sounding}
          options={SOUNDING_OPTIONS}
          onChoose={(sounding) => change({ sounding })}
        />
        <Choice
          label="Click"
          value={plan.click}
          options={CLICK_OPTIONS}
          hint="How loud it is, the mixer says. A count-in has every beat all the same."
          onChoose={(click) => change({ click })}
        />
        <Choice
          label="Band drops out"
          value={dropOut}
          options={DROP_OUTS}
          hint="The band falls silent and comes back: did you keep the time and the place?"
          onChoose={(value) => change({ dropOut: dropOutOf(value) })}
        />
      </fieldset>
      <RepeatRange />
    </>
  );
};
