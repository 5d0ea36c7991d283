import { useEffect, useRef } from 'react';
import { useSelected, useSession } from '../state/session-context';

/**
 * The last choice to undo and the last undone one to make again, each by its name, at the foot of a panel; nothing where
 * there is neither. Where the one that was pressed goes, the focus passes to the other.
 */
export const UndoRow = () => {
  const { commands } = useSession();
  const undone = useSelected(({ choices }) => choices.past.at(-1)?.name);
  const redone = useSelected(({ choices }) => choices.future[0]?.name);
  const row = useRef<HTMLFieldSetElement>(null);
  const pressed = useRef(false);
  useEffect(() => {
    if (pressed.current && !row.current?.contains(document.activeElement))
      row.current?.querySelector('button')?.focus();
    pressed.current = false;
  });
  const press = (command: () => void) => () => {
    pressed.current = true;
    command();
  };
  if (undone === undefined && redone === undefined) return null;
  return (
    <fieldset className="undo-row" aria-label="Choices made" ref={row}>
      {undone !== undefined && (
        <button type="button" className="tool" onClick={press(commands.undoChoice)}>
          Undo {undone}
        </button>
      )}
      {redone !== undefined && (
        <button type="button" className="tool" onClick={press(commands.redoChoice)}>
          Redo {redone}
        </button>
      )}
    </fieldset>
  );
};
