import { useEffect, useState } from 'react';
import { sizeText, timeText } from '../../../core/theory/quantities';
import { DeletedLine } from '../../controls/deleted-line';
import { TextField } from '../../controls/text-field';
import { useSelected, useSession } from '../../state/session-context';

/** The take that lies open, kept under a name. */
export const KeepTake = ({ suggested }: { readonly suggested: string }) => {
  const { commands } = useSession();
  const [name, setName] = useState(suggested);
  return (
    <div className="group">
      <TextField label="Keep it in this browser as" longest={80} value={name} onChange={setName} />
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => void commands.keepTake(name)}>
          Keep the take
        </button>
      </div>
    </div>
  );
};

/** Takes that are kept in the browser. */
export const KeptTakesList = () => {
  const { commands } = useSession();
  const shelf = useSelected((state) => state.takes.shelf) ?? [];
  const dropped = useSelected((state) => state.takes.dropped) ?? null;
  useEffect(() => {
    void commands.readKeptTakes();
  }, [commands]);
  return (
    <>
      <DeletedLine name={dropped} onBack={() => void commands.restoreKeptTake()} />
      {shelf.length === 0 && (
        <p className="hint">None yet. What you keep goes into “Save everything” where you want it to.</p>
      )}
      <ul className="rows">
        {shelf.map(({ id, name, seconds, bytes }) => (
          <li key={id} className="group">
            <h4 className="own-file">{name}</h4>
            <p className="hint">
              {timeText(seconds)}, {sizeText(bytes)}
            </p>
            <div className="own-buttons">
              <button type="button" className="tool" onClick={() => void commands.openKeptTake(id)}>
                Open <span className="unseen">{name}</span>
              </button>
              <button type="button" className="tool" onClick={() => void commands.dropKeptTake(id)}>
                Delete <span className="unseen">{name}</span>
              </button>
            </div>
          </li>
        ))}
      </ul>
    </>
  );
};
