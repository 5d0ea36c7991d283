import { useSelected, useSession } from '../../state/session-context';

/**
 * Offers once to have the browser keep what the player made. It stands in the book (Care has it for good): on the stand it
 * would take room from the music.
 */
export const KeepOffer = () => {
  const { commands } = useSession();
  const { offered } = useSelected((state) => state.lasting);
  if (!offered) return null;
  return (
    <div className="notice" data-tone="note" role="status">
      <p>
        What you made lies in this browser, which may clear it when the device runs out of room. Shall the
        page ask it to keep everything?
      </p>
      <button type="button" className="tool" onClick={() => void commands.askToKeep()}>
        Ask it
      </button>
      <button type="button" className="tool" onClick={commands.leaveKeeping}>
        Not now
      </button>
    </div>
  );
};
