import { DYNAMICS } from '../../../core/arranger/energy';
import { ARCS, ENDINGS, INTROS, type Plan } from '../../../core/arranger/program';
import { tradeRemark } from '../../../core/arranger/trade-remark';
import { TURNAROUNDS, type Turnarounds } from '../../../core/arranger/turnarounds';
import { TEMPO_RANGE } from '../../../core/settings/tempo';
import { asBpm, asPitchClass } from '../../../core/theory/units';
import { counted } from '../../../core/theory/wording';
import { Choice, optionsOf } from '../../controls/choice';
import { Slider } from '../../controls/slider';
import { Switch } from '../../controls/switch';
import { useSelected } from '../../state/session-context';
import { usePlan } from '../../state/use-plan';
import { KeyListField } from './key-list-field';

const INTRO_OPTIONS = optionsOf(INTROS, {
  none: 'None',
  turnaround: 'Four bars from the turnaround',
  pickup: 'Two-bar pickup',
  drums: 'Drums alone',
});
const ARC_OPTIONS = optionsOf(ARCS, {
  breathe: 'Sparse, full, break, full',
  steady: 'Steady',
  'trade fours': 'Trade fours with the drums',
  'trade twos': 'Trade twos with the drums',
});
const DYNAMICS_OPTIONS = optionsOf(DYNAMICS, {
  lively: 'Lively',
  calm: 'Calm',
  building: 'Building through each chorus',
});
const TURNAROUND_OPTIONS = optionsOf(TURNAROUNDS, {
  varied: 'Another now and then',
  one: 'The usual one',
  'as written': 'As the form has it',
});
const ENDING_OPTIONS = optionsOf(ENDINGS, {
  cadence: 'Cadence',
  held: 'Held last chord',
  stop: 'Short stop',
});
const CHORUSES = [0, 1, 2, 3, 4, 6, 8, 12, 16, 24].map((value) => ({
  value,
  text: value === 0 ? 'Until stopped' : counted(value, 'chorus', 'choruses'),
}));

const turnaroundHint = (turnarounds: Turnarounds, lined: boolean): string =>
  lined && turnarounds === 'varied'
    ? 'The usual one in every chorus while a line or calls lie over the chart.'
    : 'The last two bars. A chart of your own stays as you wrote it.';

const StartAndEnd = () => {
  const [plan, change] = usePlan();
  const chart = useSelected((state) => state.tune.chart);
  const lined = useSelected(({ settings }) => settings.line.kind !== 'none' || settings.trade.on);
  return (
    <fieldset className="group">
      <legend>Course of the song</legend>
      <div className="pair">
        <Choice
          label="Count-in"
          value={plan.countInBars}
          options={[
            { value: 0, text: 'None' },
            { value: 1, text: '1 bar' },
            { value: 2, text: '2 bars' },
          ]}
          onChoose={(countInBars) => change({ countInBars })}
        />
        <Choice
          label="Length"
          value={plan.choruses ?? 0}
          options={CHORUSES}
          onChoose={(choruses) => change({ choruses: choruses === 0 ? null : choruses })}
        />
      </div>
      <Choice
        label="Intro"
        value={plan.intro}
        options={INTRO_OPTIONS}
        onChoose={(intro) => change({ intro })}
      />
      <Choice
        label="Ending"
        value={plan.ending}
        options={ENDING_OPTIONS}
        onChoose={(ending) => change({ ending })}
      />
      <Switch label="Slow down at the end" on={plan.ritard} onChange={(ritard) => change({ ritard })} />
      <Choice
        label="Loudness from bar to bar"
        value={plan.dynamics}
        options={DYNAMICS_OPTIONS}
        onChoose={(dynamics) => change({ dynamics })}
      />
      <Choice
        label="Turnarounds"
        value={plan.turnarounds}
        options={TURNAROUND_OPTIONS}
        hint={turnaroundHint(plan.turnarounds, lined)}
        onChoose={(turnarounds) => change({ turnarounds })}
      />
      <Choice
        label="How the choruses build"
        value={plan.arc}
        options={ARC_OPTIONS}
        hint={tradeRemark(plan, chart)}
        onChoose={(arc) => change({ arc })}
      />
    </fieldset>
  );
};

const TempoPlan = () => {
  const [plan, change] = usePlan();
  const target = useSelected((state) => state.settings.tempo);
  const { tempo } = plan;
  const slower = asBpm(Math.max(TEMPO_RANGE.low, Math.round(target * 0.7)));
  const choose = (kind: Plan['tempo']['kind']): void => {
    if (kind === 'fixed') change({ tempo: { kind } });
    else if (kind === 'ramp') change({ tempo: { kind, from: slower, step: 4, every: 1 } });
    else change({ tempo: { kind, slow: slower } });
  };
  return (
    <>
      <Choice
        label="Change of tempo"
        value={tempo.kind}
        options={[
          { value: 'fixed', text: 'None' },
          { value: 'ramp', text: 'Up step by step' },
          { value: 'alternate', text: 'Slow and target in turn' },
        ]}
        onChoose={choose}
      />
      {tempo.kind === 'ramp' && (
        <div className="pair">
          <Slider
            label="Starts at"
            valueText={`${tempo.from}`}
            value={tempo.from}
            low={TEMPO_RANGE.low}
            high={Math.max(TEMPO_RANGE.low + 1, target)}
            step={1}
            onChange={(from) => change({ tempo: { ...tempo, from: asBpm(from) } })}
          />
          <Slider
            label="Each chorus"
            valueText={`+${tempo.step}`}
            value={tempo.step}
            low={1}
            high={20}
            step={1}
            onChange={(step) => change({ tempo: { ...tempo, step } })}
          />
        </div>
      )}
      {tempo.kind === 'alternate' && (
        <Slider
          label="Slow chorus at"
          valueText={`${tempo.slow}`}
          value={tempo.slow}
          low={TEMPO_RANGE.low}
          high={Math.max(TEMPO_RANGE.low + 1, target)}
          step={1}
          onChange={(slow) => change({ tempo: { ...tempo, slow: asBpm(slow) } })}
        />
      )}
    </>
  );
};

const KeyPlan = () => {
  const [plan, change] = usePlan();
  const key = useSelected((state) => state.tune.chart.key);
  const { keys } = plan;
  const choose = (kind: Plan['keys']['kind']): void =>
    change({ keys: kind === 'list' ? { kind, keys: [key, asPitchClass(key + 5)] } : { kind } });
  return (
    <>
      <Choice
        label="Change of key"
        value={keys.kind}
        options={[
          { value: 'same', text: 'None' },
          { value: 'fourths', text: 'Up a fourth each chorus' },
          { value: 'list', text: 'My own list' },
        ]}
        hint={keys.kind === 'same' ? undefined : 'The next harp is named a chorus ahead.'}
        onChoose={choose}
      />
      {keys.kind === 'list' && (
        <KeyListField keys={keys.keys} onChange={(list) => change({ keys: { kind: 'list', keys: list } })} />
      )}
    </>
  );
};

/** How the song runs: its start and end, and tempo and key over the choruses. */
export const PlanChoices = () => (
  <>
    <StartAndEnd />
    <fieldset className="group">
      <legend>From chorus to chorus</legend>
      <TempoPlan />
      <KeyPlan />
    </fieldset>
  </>
);
