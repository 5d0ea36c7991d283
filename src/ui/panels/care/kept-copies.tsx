import { useCallback, useEffect, useState } from 'react';
import type { CopyCommands } from '../../../app/keeping/kept-copies';
import { KeptText } from '../../controls/kept-text';
import { useSession } from '../../state/session-context';

type Copy = Awaited<ReturnType<CopyCommands['keptCopies']>>[number];

const NAMES: Readonly<Record<string, string>> = {
  settings: 'Settings',
  charts: 'Charts',
  'chart-drafts': 'Unsaved charts',
  harps: 'Harp case',
  tunings: 'Tunings',
};

const CopyLine = ({ copy, onDelete }: { readonly copy: Copy; readonly onDelete: () => void }) => {
  const { commands } = useSession();
  const [shown, setShown] = useState(false);
  const [said, setSaid] = useState('');
  const number = copy.id.slice(copy.id.lastIndexOf('.') + 1);
  const title = `${NAMES[copy.name] ?? copy.name}, copy ${number}`;
  return (
    <li>
      <p>
        <strong>{title}</strong>, {copy.raw.length} characters
      </p>
      {shown && <KeptText label={title} text={copy.raw} />}
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          aria-expanded={shown}
          aria-label={`See ${title}`}
          onClick={() => setShown(!shown)}
        >
          See
        </button>
        <button
          type="button"
          className="tool"
          aria-label={`Save ${title} as file`}
          onClick={() => void commands.saveCopy(copy).then(setSaid)}
        >
          Save as file
        </button>
        <button type="button" className="tool" aria-label={`Delete ${title}`} onClick={onDelete}>
          Delete
        </button>
      </div>
      <p role="status" className="hint">
        {said}
      </p>
    </li>
  );
};

/** Copies of what could not be read or was put away: to see, copy, save as file and delete. */
export const KeptCopies = () => {
  const { commands } = useSession();
  const [copies, setCopies] = useState<readonly Copy[] | null>(null);
  const look = useCallback(() => void commands.keptCopies().then(setCopies), [commands]);
  useEffect(look, [look]);
  const remove = (copy: Copy): void => {
    commands.deleteCopy(copy);
    look();
  };
  if (copies === null) return null;
  if (copies.length === 0) {
    return (
      <p className="hint">
        There are none. When something kept cannot be read, a copy of it as it was is put here.
      </p>
    );
  }
  return (
    <>
      <p className="hint">
        Each is as it was before something else took its place. Copies take up room: delete those you do not
        need.
      </p>
      <ul className="kept-copies">
        {copies.map((copy) => (
          <CopyLine key={copy.id} copy={copy} onDelete={() => remove(copy)} />
        ))}
      </ul>
    </>
  );
};
