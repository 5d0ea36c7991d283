import type { Style } from '../core/players/style';
import type { PartId } from '../core/score/score';
import type { BassVoice, ChordVoice, Kit } from '../core/score/voices';
import { Choice } from './choice';
import { OwnSounds } from './own-sounds';
import { useSelected, useSession } from './session-context';
import { Slider } from './slider';
import { Switch } from './switch';
import { useStyle } from './use-plan';

const CHORDS: readonly { readonly value: ChordVoice; readonly text: string }[] = [
  { value: 'piano', text: 'Piano' },
  { value: 'electric-piano', text: 'Electric piano' },
  { value: 'organ', text: 'Organ' },
  { value: 'guitar', text: 'Guitar' },
];
const BASSES: readonly { readonly value: BassVoice; readonly text: string }[] = [
  { value: 'upright-bass', text: 'Upright' },
  { value: 'fingered-bass', text: 'Electric, fingered' },
];
const KITS: readonly { readonly value: Kit; readonly text: string }[] = [
  { value: 'sticks', text: 'Sticks' },
  { value: 'brushes', text: 'Brushes' },
];
const STOP_TIMES: readonly { readonly value: Style['stopTime']; readonly text: string }[] = [
  { value: 'off', text: 'None' },
  { value: 'first four bars', text: 'First four bars' },
  { value: 'whole chorus', text: 'Whole chorus' },
];
const PUSHED: readonly { readonly part: PartId; readonly name: string }[] = [
  { part: 'drums', name: 'Drums' },
  { part: 'bass', name: 'Bass' },
  { part: 'chords', name: 'Chords' },
];

const pushText = (ms: number): string => {
  if (ms === 0) return 'on the beat';
  return `${Math.abs(ms)} ms ${ms > 0 ? 'behind' : 'ahead'}`;
};

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
          { value: 'by tempo', text: 'By tempo' },
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

/** Who plays and how: instruments, swing, stop-time, place against the beat. */
export const PlayerChoices = () => {
  const { commands } = useSession();
  const [style, change] = useStyle();
  const seed = useSelected((state) => state.settings.style.seed);
  return (
    <>
      <fieldset className="group">
        <legend>Players</legend>
        <Choice
          label="Chords by"
          value={style.chords}
          options={CHORDS}
          onChoose={(chords) => change({ chords })}
        />
        <div className="pair">
          <Choice label="Bass" value={style.bass} options={BASSES} onChoose={(bass) => change({ bass })} />
          <Choice label="Drum kit" value={style.kit} options={KITS} onChoose={(kit) => change({ kit })} />
        </div>
        <Switch
          label="Leave room for the harp"
          on={style.leaveRoom}
          hint="Keeps the chords below the harp’s middle octave."
          onChange={(leaveRoom) => change({ leaveRoom })}
        />
        <div className="stack">
          <button type="button" className="tool" onClick={commands.newTake}>
            New take
          </button>
          <p className="hint">Take {seed}. The same take plays the same fills and lines every time.</p>
        </div>
      </fieldset>
      <OwnSounds />
      <fieldset className="group">
        <legend>Time</legend>
        <SwingChoice />
        <Choice
          label="Stop-time"
          value={style.stopTime}
          options={STOP_TIMES}
          onChoose={(stopTime) => change({ stopTime })}
        />
      </fieldset>
      <fieldset className="group">
        <legend>Ahead of or behind the beat</legend>
        {PUSHED.map(({ part, name }) => (
          <Slider
            key={part}
            label={name}
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
