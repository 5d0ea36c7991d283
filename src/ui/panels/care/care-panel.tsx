import type { LastingState } from '../../../app/lasting/lasting-state';
import type { NewerVersionState } from '../../../app/offline/newer-version-state';
import { Fold } from '../../controls/fold';
import { Panel } from '../../controls/panel';
import { useSelected, useSession } from '../../state/session-context';
import { KeptCopies } from './kept-copies';

const KEEPING: Readonly<Record<NewerVersionState['keeping'], string>> = {
  off: '',
  fetching: 'Being kept for offline use …',
  kept: 'Kept for offline use: this page opens and plays without a network.',
  insecure:
    'Not kept for offline use: browsers allow that only for https addresses and for pages of the machine itself.',
  refused: 'Not kept for offline use: this browser does not allow it.',
  failed: 'Not kept for offline use: a part could not be fetched. The next visit tries again.',
};

const OfflineLine = () => {
  const keeping = useSelected((state) => state.offline.keeping);
  return keeping === 'off' ? null : <p>{KEEPING[keeping]}</p>;
};

const lastingWords = ({ is, declined }: LastingState['lasting']): string => {
  if (is === 'kept') return 'The browser keeps what you make for good, until you clear it yourself.';
  return declined
    ? 'The browser did not promise to keep what you make: it may clear it when the device runs out of room. Some browsers keep pages that are used often or installed; a file with everything (Take away) is safe either way.'
    : 'The browser may clear what you make when the device runs out of room.';
};

const LastingLine = () => {
  const { commands } = useSession();
  const lasting = useSelected((state) => state.lasting);
  if (lasting.is === 'unasked' && !lasting.declined) return null;
  return (
    <>
      <p aria-live="polite">{lastingWords(lasting)}</p>
      {lasting.is !== 'kept' && (
        <button type="button" className="tool" onClick={() => void commands.askToKeep()}>
          Ask the browser to keep everything
        </button>
      )}
    </>
  );
};

/** Cautions, and what the program does with what it knows. */
export const CarePanel = ({ onClose }: { readonly onClose: () => void }) => (
  <Panel title="Care" onClose={onClose}>
    <Fold title="Ears" open>
      <p>
        Start quietly and stay where you can talk over the band. The World Health Organization and the ITU
        count 80 dBA for 40 hours a week as the most an adult’s ears should get; every 3 dB more halves the
        time. Take quiet breaks. Ringing or dullness afterwards is a reason to see an audiologist. At work,
        your local rules on noise come first.
      </p>
    </Fold>
    <Fold title="Breath" open>
      <p>
        Stop when you feel light-headed, put the harp down, breathe normally and rest before you go on. If it
        comes back, or you live with a lung or heart condition, ask a doctor before long sessions.
      </p>
    </Fold>
    <Fold title="Reeds" open>
      <p>
        Bends and overbends come from the shape of the mouth, not from force. If a note does not come, play
        softer and try again later, or ask a teacher. Reeds that are pushed go flat and crack. Tap the harp
        dry, and do not share one that has not been cleaned.
      </p>
    </Fold>
    <Fold title="Your data" open>
      <p>
        Everything stays in this browser, and there is no account. The page asks nobody but the place it came
        from, and that only for its own parts, and for a newer version of them when you open it.
      </p>
      <OfflineLine />
      <LastingLine />
    </Fold>
    <Fold title="Kept copies" open>
      <KeptCopies />
    </Fold>
  </Panel>
);
