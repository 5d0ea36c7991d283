import { useSelected, useSession } from '../state/session-context';

/** The last choice to undo and the last undone one to make again, each by its name. */
export const UndoRow = () => {
  const { commands } = useSession();
  const undone = useSelected(({ choices }) => choices.past.at(-1)?.name);
  const redone = useSelected(({ choices }) => choices.future[0]?.name);
  return (
    <fieldset className="undo-row" aria-label="Choices made">
      <button type="button" className="tool" disabled={undone === undefined} onClick={commands.undoChoice}>
        {undone === undefined ? 'Nothing to undo' : `Undo ${undone}`}
      </button>
      {redone !== undefined && (
        <button type="button" className="tool" onClick={commands.redoChoice}>
          Redo {redone}
        </button>
      )}
    </fieldset>
  );
};
