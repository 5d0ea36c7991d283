import type { Calibration } from '../../../core/hearing/calibration';
import type { EarShows } from '../../../core/settings/practice-settings';
import { Choice } from '../../controls/choice';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { LevelMeter } from '../../ear/level-meter';
import { useSelected, useSession } from '../../state/session-context';

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
      hint="A microphone at an arm’s length hears best. With a headset over radio all comes late: use a wire."
      onChoose={(id) => commands.chooseMicrophone(id === ANY ? null : id)}
    />
  );
};

const STEPS = {
  quiet: 'Two seconds of quiet, please: the room is being measured.',
  chirps: 'Some chirps: the way from loudspeaker to microphone is being measured. Stay quiet.',
  along: 'Now play any one note along with each click, eight times. Without a harp at hand, just wait.',
} as const;

const ms = (seconds: number): string => `${Math.round(seconds * 1000)} ms`;

const foundWords = ({ noise, roundTrip, leak, lag }: Calibration): readonly string[] => [
  ...(noise === null ? [] : [`The room lies at ${Math.round(noise)} dB.`]),
  roundTrip === null || leak === null
    ? 'The loudspeaker is not heard: headphones, or far away. The band then needs no taking out.'
    : `The loudspeaker comes back after ${ms(roundTrip)}, at ${Math.round(leak)} dB.`,
  lag === null
    ? 'No notes were heard along with the clicks, so your timing is judged by a guess.'
    : `Your notes are heard ${ms(lag)} after a click, all ways together.`,
];

const CalibrationPart = () => {
  const { commands } = useSession();
  const step = useSelected((state) => state.ear.calibrating);
  const known = useSelected((state) => state.ear.calibration);
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  return (
    <>
      <p>
        Eleven seconds, in the room and at the volume you play with; you can do without. It is kept for this
        microphone. Turn the volume down first if you wear headphones: the chirps are short, but clear.
      </p>
      <p role="status">{step !== null && STEPS[step]}</p>
      <div className="save-row">
        <button
          type="button"
          className="tool"
          disabled={!listening}
          onClick={() => (step === null ? void commands.calibrate() : commands.cancelCalibration())}
        >
          {step === null ? (known === null ? 'Calibrate' : 'Calibrate again') : 'Break off'}
        </button>
        {known !== null && step === null && (
          <button type="button" className="tool" onClick={commands.forgetCalibration}>
            Forget it
          </button>
        )}
      </div>
      {!listening && <p className="hint">Press Listen first.</p>}
      {known !== null && step === null && (
        <ul className="marks">
          {foundWords(known).map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
    </>
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
          What the microphone hears is worked out on this machine. It is never sent anywhere, and none of it
          is kept.
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
    </Panel>
  );
};
