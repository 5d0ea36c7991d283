import { audioBytes, extentOf, type TakeAwayChoices } from '../../../app/export/export-state';
import { songSeconds } from '../../../core/song/song-sections';
import { sizeText, timeText } from '../../../core/theory/quantities';
import { KindChoice } from '../../chart/kind-choice';
import { Choice } from '../../controls/choice';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

const CHORUSES = [1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64];

const useChoices = () => useSelected((state) => state.takeAway.choices);

const useSeconds = (): number => {
  const { style, tempo, plan } = useSelected((state) => state.settings);
  const chart = useSelected((state) => state.tune.chart);
  return songSeconds({ chart, style, tempo, plan }, extentOf(useChoices(), plan));
};

/** How much of the song goes into MIDI and audio files. */
export const LengthChoices = () => {
  const { commands } = useSession();
  const plan = useSelected((state) => state.settings.plan);
  const { choruses, countIn, ending } = extentOf(useChoices(), plan);
  const counts = [...new Set([...CHORUSES, choruses])].sort((a, b) => a - b);
  const repeated = plan.repeat !== null;
  return (
    <fieldset className="group">
      <legend>How much</legend>
      <Choice
        label={repeated ? 'Times through the repeated bars' : 'Choruses'}
        value={choruses}
        options={counts.map((value) => ({ value, text: String(value) }))}
        hint={`About ${timeText(useSeconds())}, as the band plays it now.`}
        onChoose={(value) => commands.chooseTakeAway({ choruses: value })}
      />
      <Switch
        label="With count-in"
        on={countIn}
        onChange={(on) => commands.chooseTakeAway({ countIn: on })}
      />
      {!repeated && (
        <Switch
          label="With ending"
          on={ending}
          hint="Without it the last chorus leads on, to be played round and round."
          onChange={(on) => commands.chooseTakeAway({ ending: on })}
        />
      )}
    </fieldset>
  );
};

const WavChoices = ({ sampleRate, bits }: TakeAwayChoices) => {
  const { commands } = useSession();
  return (
    <div className="pair">
      <Choice
        label="Sample rate"
        value={sampleRate}
        options={[
          { value: 44100, text: '44.1 kHz' },
          { value: 48000, text: '48 kHz' },
        ]}
        onChoose={(value) => commands.chooseTakeAway({ sampleRate: value })}
      />
      <Choice
        label="Bit depth"
        value={bits}
        options={[
          { value: 16, text: '16 bit' },
          { value: 24, text: '24 bit' },
        ]}
        onChoose={(value) => commands.chooseTakeAway({ bits: value })}
      />
    </div>
  );
};

/** What kind of audio file, and how many. */
export const AudioChoices = () => {
  const { commands } = useSession();
  const choices = useChoices();
  const encodings = useSelected((state) => state.takeAway.encodings);
  const size = sizeText(audioBytes(choices, encodings, useSeconds()));
  return (
    <>
      <KindChoice
        hint={
          encodings.length === 0
            ? `About ${size}. This browser cannot make compressed files.`
            : `About ${size}${choices.files === 'parts' ? ' each' : ''}.`
        }
      />
      {choices.kind === 'wav' && <WavChoices {...choices} />}
      <Choice
        label="Files"
        value={choices.files}
        options={[
          { value: 'band', text: 'The whole band in one' },
          { value: 'parts', text: 'One for each part' },
        ]}
        hint="Parts muted in the mixer stay out. The faders count, the volume does not."
        onChoose={(files) => commands.chooseTakeAway({ files })}
      />
    </>
  );
};
