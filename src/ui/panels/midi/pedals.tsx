import { PEDAL_ACTIONS, type PedalAction, pedalWords } from '../../../core/midi/pedals';
import { useSelected, useSession } from '../../state/session-context';

const NAMES: Readonly<Record<PedalAction, string>> = {
  play: 'Play and stop',
  stop: 'Stop',
  pause: 'Pause and go on',
  'next song': 'Next song of the set',
  'previous song': 'Previous song of the set',
  'next bar': 'Next bar',
  'previous bar': 'Previous bar',
  repeat: 'Repeat this bar, or no longer',
};

const PedalRow = ({ action }: { readonly action: PedalAction }) => {
  const { commands } = useSession();
  const pedal = useSelected((state) => state.settings.midi.pedals.find((each) => each.action === action));
  const waits = useSelected((state) => state.midi.learning === action);
  const open = useSelected((state) => state.midi.status.kind === 'open');
  return (
    <tr>
      <th scope="row">{NAMES[action]}</th>
      <td aria-live="polite">{waits ? 'Press it now' : pedal === undefined ? 'none' : pedalWords(pedal)}</td>
      <td>
        <button
          type="button"
          className="tool"
          aria-pressed={waits}
          aria-label={`${NAMES[action]}: choose its switch`}
          disabled={!open}
          onClick={() => commands.learnPedal(waits ? null : action)}
        >
          {waits ? 'Leave it' : 'Choose'}
        </button>
        {pedal !== undefined && (
          <button
            type="button"
            className="tool"
            aria-label={`${NAMES[action]}: forget its switch`}
            onClick={() => commands.forgetPedal(action)}
          >
            Forget
          </button>
        )}
      </td>
    </tr>
  );
};

/** What switches do: each is taught by pressing it. */
export const Pedals = () => (
  <>
    <p>
      Press Choose, and then the pedal, pad or key. Pedals that turn pages need none of this: arrow keys move
      by a bar or a line, page keys turn the songs of a set.
    </p>
    <table className="pedals">
      <caption className="unseen">What switches do</caption>
      <thead className="unseen">
        <tr>
          <th scope="col">What it does</th>
          <th scope="col">Switch</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        {PEDAL_ACTIONS.map((action) => (
          <PedalRow key={action} action={action} />
        ))}
      </tbody>
    </table>
  </>
);
