import { PART_NAMES } from '../../../core/score/part-names';
import { PART_IDS, type PartId } from '../../../core/score/score';
import { MOST_LAG } from '../../../core/settings/sound-settings';
import { Panel } from '../../controls/panel';
import { Slider } from '../../controls/slider';
import { UndoRow } from '../../controls/undo-row';
import { useSelected, useSession } from '../../state/session-context';

const panText = (pan: number): string => {
  if (Math.abs(pan) < 0.05) return 'centre';
  return `${Math.round(Math.abs(pan) * 100)} % ${pan < 0 ? 'left' : 'right'}`;
};

const Strip = ({ part, name }: { readonly part: PartId; readonly name: string }) => {
  const { commands } = useSession();
  const channel = useSelected((state) => state.settings.mix.channels[part]);
  return (
    <fieldset className="channel-strip" aria-label={name}>
      <h3>{name}</h3>
      <Slider
        label={`${name} level`}
        unseenLabel
        valueText={`${Math.round(channel.gain * 100)} %`}
        value={channel.gain}
        low={0}
        high={1}
        step={0.01}
        onChange={(gain) => commands.setChannel(part, { gain })}
      />
      <div className="strip-buttons">
        <button
          type="button"
          className="tool"
          aria-label={`Mute ${name}`}
          aria-pressed={channel.muted}
          onClick={() => commands.setChannel(part, { muted: !channel.muted })}
        >
          Mute
        </button>
        <button
          type="button"
          className="tool"
          aria-label={`Solo ${name}`}
          aria-pressed={channel.solo}
          onClick={() => commands.setChannel(part, { solo: !channel.solo })}
        >
          Solo
        </button>
      </div>
      <div className="pan">
        <Slider
          label={`${name} pan:`}
          valueText={panText(channel.pan)}
          value={channel.pan}
          low={-1}
          high={1}
          step={0.05}
          onChange={(pan) => commands.setChannel(part, { pan })}
        />
      </div>
    </fieldset>
  );
};

/** For loudspeakers and headphones without a cable, which sound late and do not say so. */
const SpeakerLag = () => {
  const { commands } = useSession();
  const lag = useSelected((state) => state.settings.speakerLag);
  return (
    <div className="group">
      <Slider
        label="Loudspeaker late by"
        valueText={`${lag} ms`}
        value={lag}
        low={0}
        high={MOST_LAG}
        step={10}
        onChange={(speakerLag) => commands.choose({ speakerLag })}
      />
      <p className="hint">
        Wireless loudspeakers and headphones sound late. Play, watch the beats of a bar light up, and raise
        this until they light up as you hear them.
      </p>
    </div>
  );
};

/** The mixer: one strip a part and the volume of everything. */
export const MixerPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const master = useSelected((state) => state.settings.mix.master);
  const second = useSelected((state) => state.settings.style.second !== 'none');
  return (
    <Panel title="Mixer" onClose={onClose}>
      <div className="group">
        <Slider
          label="Volume"
          valueText={`${Math.round(master * 100)} %`}
          value={master}
          low={0}
          high={1}
          step={0.01}
          onChange={commands.setMaster}
        />
        <p className="hint">
          Keep it low enough to hear your own breath on the reeds. Loud sound over a long time harms hearing:
          take quiet breaks, and ask an audiologist if your ears ring.
        </p>
      </div>
      <div className="strips">
        {PART_IDS.filter((part) => part !== 'second' || second).map((part) => (
          <Strip key={part} part={part} name={PART_NAMES[part]} />
        ))}
      </div>
      <SpeakerLag />
      <UndoRow />
    </Panel>
  );
};
