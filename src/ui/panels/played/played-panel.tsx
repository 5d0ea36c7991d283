import type { OpenTake } from '../../../app/takes/takes-state';
import type { TakeMinutes } from '../../../core/settings/practice-settings';
import { sizeText, timeText } from '../../../core/theory/quantities';
import { counted } from '../../../core/theory/wording';
import { WorkReport } from '../../chart/work-report';
import { Choice } from '../../controls/choice';
import { FileButton } from '../../controls/file-button';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { useSelected, useSession } from '../../state/session-context';
import { KeepTake, KeptTakesList } from './kept-takes-list';
import { TakePlace } from './take-place';
import { WrittenTake } from './written-take';

const MINUTES: readonly { readonly value: TakeMinutes; readonly text: string }[] = [
  { value: 0, text: 'Nothing' },
  { value: 2, text: 'The last two minutes' },
  { value: 5, text: 'The last five minutes' },
  { value: 10, text: 'The last ten minutes' },
];

/** What is kept of the last minutes. */
const Kept = () => {
  const { commands } = useSession();
  const minutes = useSelected((state) => state.settings.takeMinutes);
  const kept = useSelected((state) => state.takes.kept);
  const listening = useSelected((state) => state.ear.status.kind === 'listening');
  return (
    <>
      <Choice
        label="How much of my playing is kept"
        value={minutes}
        options={MINUTES}
        hint="While the microphone listens. It stays in this page’s memory, is sent nowhere, and is gone when the page is closed."
        onChoose={(takeMinutes) => commands.choose({ takeMinutes })}
      />
      {minutes > 0 && (
        <>
          <p>
            {kept === null
              ? listening
                ? 'It begins with the next second.'
                : 'Press Listen, then play.'
              : `${timeText(kept.seconds)} kept, ${sizeText(kept.bytes)}.`}
          </p>
          <div className="save-row">
            <button
              type="button"
              className="tool"
              disabled={kept === null}
              onClick={() => void commands.takeUpPlaying()}
            >
              Look at it
            </button>
            <button type="button" className="tool" disabled={kept === null} onClick={commands.forgetPlaying}>
              Throw it away
            </button>
          </div>
        </>
      )}
    </>
  );
};

/** A recording from a file. */
const FromFile = () => {
  const { commands } = useSession();
  return (
    <>
      <p className="hint">
        One harp alone is written down best. It is heard as played on the harp in hand, and stays on this
        machine.
      </p>
      <div className="save-row">
        <FileButton
          text="Open a recording"
          label="Recording"
          accept="audio/*"
          onFile={(file) => void commands.openRecording(file)}
        />
      </div>
    </>
  );
};

const headOf = ({ source, name, seconds, notes, bytes }: OpenTake): string =>
  `${source === 'file' ? name : 'Your last minutes'}: ${timeText(seconds)}, ${counted(notes, 'note')}, ${sizeText(bytes)}`;

/** What can be done with the take that lies open. */
const TakeTools = ({ take }: { readonly take: OpenTake }) => {
  const { commands } = useSession();
  const sounding = useSelected((state) => state.takes.sounding);
  return (
    <>
      <p className="own-file">{headOf(take)}</p>
      <div className="own-buttons">
        {sounding !== null && (
          <button type="button" className="tool" onClick={commands.stopTake}>
            Stop
          </button>
        )}
        {sounding === null && (
          <button type="button" className="tool" onClick={() => void commands.hearTake('alone')}>
            Hear it alone
          </button>
        )}
        {sounding === null && take.withBand && (
          <button type="button" className="tool" onClick={() => void commands.hearTake('band')}>
            Hear it with the band
          </button>
        )}
      </div>
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => void commands.saveTakeSound('alone')}>
          Save WAV, alone
        </button>
        {take.withBand && (
          <button type="button" className="tool" onClick={() => void commands.saveTakeSound('band')}>
            Save WAV, with the band
          </button>
        )}
        <button
          type="button"
          className="tool"
          disabled={take.notes === 0}
          onClick={() => void commands.saveTakeNotes()}
        >
          Save MIDI
        </button>
        <button type="button" className="tool" onClick={commands.deleteTake}>
          Delete it
        </button>
      </div>
    </>
  );
};

/** What is being done, or how the last thing went. */
const Work = () => {
  const { commands } = useSession();
  const work = useSelected((state) => state.takes.work);
  const message = useSelected((state) => state.takes.message);
  const working = work && (
    <>
      <p>
        {work.what}, {Math.floor(work.share * 100)} %
      </p>
      <progress aria-label={work.what} value={work.share} max={1} />
    </>
  );
  return <WorkReport working={working} onCancel={commands.stopTake} message={message} />;
};

/** What was played: the last minutes, or a recording; as sound, as tab under the bars, as files. */
export const PlayedPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const take = useSelected((state) => state.takes.take);
  return (
    <Panel title="Played" onClose={onClose}>
      <Work />
      {take !== null && (
        <section className="group">
          <h3>What you played</h3>
          <TakeTools take={take} />
          <KeepTake key={take.name} suggested={take.name} />
          {take.source === 'file' && <TakePlace take={take} />}
          <WrittenTake take={take} />
        </section>
      )}
      <Fold title="Takes you keep" open={false}>
        <KeptTakesList />
      </Fold>
      <Fold title="My last minutes" open>
        <Kept />
      </Fold>
      <Fold title="A recording" open>
        <FromFile />
      </Fold>
    </Panel>
  );
};
