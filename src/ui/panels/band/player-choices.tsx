import { STOP_TIMES, TIMES } from '../../../core/players/style';
import { PART_NAMES } from '../../../core/score/part-names';
import type { PartId } from '../../../core/score/score';
import { BASS_VOICES, CHORD_VOICES, KITS, SECOND_VOICES } from '../../../core/score/voices';
import { apartWords } from '../../../core/theory/apart-words';
import { Choice, optionsOf } from '../../controls/choice';
import { Slider } from '../../controls/slider';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';
import { useStyle } from '../../state/use-plan';
import { SoundSources } from './sound-sources';
import { OwnSounds } from './soundfont-choice';

const CHORD_OPTIONS = optionsOf(CHORD_VOICES, {
  piano: 'Piano',
  'electric-piano': 'Electric piano',
  organ: 'Organ',
  guitar: 'Guitar',
});
const SECOND_OPTIONS = optionsOf(['none', ...SECOND_VOICES] as const, {
  none: 'None',
  organ: 'Organ, held chords',
  guitar: 'Guitar, short chops',
});
const BASS_OPTIONS = optionsOf(BASS_VOICES, {
  'upright-bass': 'Upright',
  'fingered-bass': 'Electric, fingered',
});
const KIT_OPTIONS = optionsOf(KITS, {
  sticks: 'Sticks',
  brushes: 'Brushes',
});
const STOP_TIME_OPTIONS = optionsOf(STOP_TIMES, {
  off: 'None',
  'first four bars': 'First four bars',
  'whole chorus': 'Whole chorus',
});
const TIME_OPTIONS = optionsOf(TIMES, {
  usual: 'As the feel goes',
  'half-time': 'Half time: backbeat on 3',
  'double-time': 'Double time: twice as fast',
});
const PUSHED = ['drums', 'bass', 'chords'] as const satisfies readonly PartId[];

const pushText = (ms: number): string =>
  ms === 0 ? 'on the beat' : apartWords(ms / 1000, { earlier: 'ahead', later: 'behind' });

const SwingChoice = () => {
  const [style, change] = useStyle();
  const kind = typeof style.swing === 'number' ? 'ratio' : style.swing;
  return (
    <>
      <Choice
        label="Swing"
        value={kind}
        options={[
          { value: 'feel', text: 'Usual for the feel' },
          { value: 'by tempo', text: 'By tempo, each part its own' },
          { value: 'hard ride', text: 'By tempo, hard ride' },
          { value: 'ratio', text: 'My own ratio' },
        ]}
        onChoose={(value) => change({ swing: value === 'ratio' ? 2 : value })}
      />
      {typeof style.swing === 'number' && (
        <Slider
          label="Long to short"
          valueText={`${style.swing.toFixed(1)} to 1`}
          value={style.swing}
          low={1}
          high={3.5}
          step={0.1}
          onChange={(swing) => change({ swing })}
        />
      )}
    </>
  );
};

/** Whether every Play is a take of its own, or the same fills and lines come back. */
const Take = () => {
  const { commands } = useSession();
  const seed = useSelected((state) => state.settings.style.seed);
  const same = useSelected((state) => state.settings.sameTake);
  return (
    <>
      <Switch
        label="Same take at every Play"
        on={same}
        hint={same ? 'The same fills and lines every time.' : 'Every Play has fills and lines of its own.'}
        onChange={(sameTake) => commands.choose({ sameTake })}
      />
      <div className="stack">
        <button type="button" className="tool" aria-describedby="take-hint" onClick={commands.newTake}>
          New take
        </button>
        <p className="hint" id="take-hint">
          Take {seed}, as last heard: what you take away is this one.
        </p>
      </div>
    </>
  );
};

/** Whether the chords heed what the microphone hears. */
const BandListens = () => {
  const { commands } = useSession();
  const listens = useSelected((state) => state.settings.bandListens);
  return (
    <Switch
      label="Chords listen to the harp"
      on={listens}
      hint="With Listen on: thinner while you play, answers while you rest."
      onChange={(bandListens) => commands.choose({ bandListens })}
    />
  );
};

/** Who plays and how: instruments, swing, stop-time, place against the beat. */
export const PlayerChoices = () => {
  const [style, change] = useStyle();
  return (
    <>
      <fieldset className="group">
        <legend>Players</legend>
        <Choice
          label="Chords by"
          value={style.chords}
          options={CHORD_OPTIONS}
          onChoose={(chords) => change({ chords })}
        />
        <Choice
          label="Second chord player"
          value={style.second}
          options={SECOND_OPTIONS}
          hint={
            style.second === 'none'
              ? undefined
              : 'Shares register and rhythm with the first, and rests where little is going on.'
          }
          onChoose={(second) => change({ second })}
        />
        <div className="pair">
          <Choice
            label="Bass"
            value={style.bass}
            options={BASS_OPTIONS}
            onChoose={(bass) => change({ bass })}
          />
          <Choice
            label="Drum kit"
            value={style.kit}
            options={KIT_OPTIONS}
            onChoose={(kit) => change({ kit })}
          />
        </div>
        <Switch
          label="Leave room for the harp"
          on={style.leaveRoom}
          hint="Keeps the chords below 2 draw of the harp in hand."
          onChange={(leaveRoom) => change({ leaveRoom })}
        />
        <BandListens />
        <Take />
      </fieldset>
      <SoundSources />
      <OwnSounds />
      <fieldset className="group">
        <legend>Time</legend>
        <SwingChoice />
        <Choice
          label="Half or double time"
          value={style.time}
          options={TIME_OPTIONS}
          hint={style.time === 'usual' ? undefined : 'The chords go by as before.'}
          onChoose={(time) => change({ time })}
        />
        <Choice
          label="Stop-time"
          value={style.stopTime}
          options={STOP_TIME_OPTIONS}
          onChoose={(stopTime) => change({ stopTime })}
        />
      </fieldset>
      <fieldset className="group">
        <legend>Ahead of or behind the beat</legend>
        {PUSHED.map((part) => (
          <Slider
            key={part}
            label={PART_NAMES[part]}
            valueText={pushText(style.push[part] ?? 0)}
            value={style.push[part] ?? 0}
            low={-40}
            high={40}
            step={1}
            onChange={(ms) => change({ push: { ...style.push, [part]: ms } })}
          />
        ))}
      </fieldset>
    </>
  );
};
