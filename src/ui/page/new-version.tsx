import { useState } from 'react';
import { useSelected, useSession } from '../state/session-context';

/** Says that a newer version lies ready, and goes over to it when asked; a playing band is never cut off. */
export const NewVersion = () => {
  const { commands } = useSession();
  const { newer, wanted } = useSelected((state) => state.offline);
  const [later, setLater] = useState(false);
  if (!newer || later) return null;
  if (wanted)
    return (
      <div className="notice" data-tone="note">
        <p>The new version comes as soon as the music has stopped and every file is done.</p>
      </div>
    );
  return (
    <div className="notice" data-tone="note">
      <p>A new version of Combshed is ready.</p>
      <button type="button" className="tool" onClick={commands.takeNewVersion}>
        Use the new version
      </button>
      <button type="button" className="tool" onClick={() => setLater(true)}>
        Later
      </button>
    </div>
  );
};
