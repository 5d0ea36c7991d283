import type { EarShows } from '../../../core/settings/practice-settings';
import { Choice } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { LevelMeter } from '../../ear/level-meter';
import { useSelected, useSession } from '../../state/session-context';
import { CalibrationPart } from './calibration-part';
import { OwnTuning } from './own-tuning';

/** The value of the system's own choice, which no microphone has for an id. */
const ANY = '';

const Microphones = () => {
  const { commands } = useSession();
  const devices = useSelected((state) => state.ear.devices);
  const chosen = useSelected((state) => state.settings.microphone);
  const known = devices.some(({ id }) => id === chosen);
  return (
    <Choice
      label="Microphone"
      value={chosen ?? ANY}
      options={[
        { value: ANY, text: 'The system’s own choice' },
        ...devices.map(({ id, name }, i) => ({ value: id, text: name || `Microphone ${i + 1}` })),
        ...(chosen !== null && !known ? [{ value: chosen, text: 'The one chosen, not plugged in' }] : []),
      ]}
      hint="A microphone at an arm’s length hears best. A wireless headset makes everything late: use one with a wire."
      onChoose={(id) => commands.chooseMicrophone(id === ANY ? null : id)}
    />
  );
};

const SHOWS: readonly { readonly value: EarShows; readonly text: string }[] = [
  { value: 'playing', text: 'While I play' },
  { value: 'after', text: 'After the chorus only' },
];

/** What hears the player: which microphone, how loud, how it was measured, and when what it hears is shown. */
export const EarPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const kind = useSelected((state) => state.ear.status.kind);
  const shows = useSelected((state) => state.settings.earShows);
  const open = kind === 'listening' || kind === 'silent' || kind === 'asking';
  return (
    <Panel title="Ear" onClose={onClose}>
      <Fold title="Microphone" open>
        <p>
          What the microphone hears is worked out on this machine. It is never sent anywhere, and no sound is
          kept unless you ask for it under Practise, Played.
        </p>
        <div className="save-row">
          <button type="button" className="tool" aria-pressed={open} onClick={commands.toggleListening}>
            {open ? 'Stop listening' : 'Listen'}
          </button>
        </div>
        <Microphones />
        <LevelMeter />
      </Fold>
      <Fold title="What is shown" open>
        <Choice
          label="Picture of my playing"
          value={shows}
          options={SHOWS}
          hint="Over the drawings of the harp. Playing without it now and then shows what has stayed."
          onChoose={(earShows) => commands.choose({ earShows })}
        />
      </Fold>
      <Fold title="Calibration" open>
        <CalibrationPart />
      </Fold>
      <Fold title="The harp’s own tuning">
        <OwnTuning />
      </Fold>
    </Panel>
  );
};
