import { useState } from 'react';
import { useSelected, useSession } from '../../state/session-context';

/** What is done with the log as a whole: files, and deleting. */
export const LogTools = () => {
  const { commands } = useSession();
  const count = useSelected((state) => state.log.entries.length);
  const [said, setSaid] = useState('');
  if (count === 0) return null;
  const save = async (kind: 'json' | 'csv'): Promise<void> => setSaid(await commands.saveLog(kind));
  return (
    <section className="group">
      <h3>The whole log</h3>
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => void save('csv')}>
          Save as a table (CSV)
        </button>
        <button type="button" className="tool" onClick={() => void save('json')}>
          Save as JSON
        </button>
        <button type="button" className="tool" onClick={() => commands.dropLog(null)}>
          Delete all of it
        </button>
      </div>
      <p role="status">{said}</p>
      <p className="hint">“Save everything” under Take away has the log in it too.</p>
    </section>
  );
};
