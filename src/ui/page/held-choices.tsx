import { heldWords } from '../../core/song/held-choices';
import { useSelected, useSession } from '../state/session-context';
import { useNames } from '../state/use-names';

/** Says what waits for the next chorus, with the way to have it now or not at all. */
export const HeldChoices = () => {
  const { commands } = useSession();
  const names = useNames();
  const waiting = useSelected((state) => state.waiting);
  if (waiting === null) return null;
  const when = waiting.from === null ? 'When the band stops' : 'From the next chorus';
  return (
    <div className="notice" data-tone="note">
      <p>
        {when}: {heldWords(waiting.held, waiting.tune, names)}.
      </p>
      <button type="button" className="tool" onClick={commands.changeNow}>
        Change now
      </button>
      <button type="button" className="tool" onClick={commands.keepAsIs}>
        Take it back
      </button>
    </div>
  );
};
