import { useState } from 'react';
import { FileButton } from '../../controls/file-button';
import { useSelected, useSession } from '../../state/session-context';

/** All phrases of one's own as a file, and such a file taken in. */
export const LibraryFile = () => {
  const { commands } = useSession();
  const none = useSelected((state) => state.phrasebook.phrases.length === 0);
  const [told, setTold] = useState<readonly string[]>([]);
  const read = async (file: File): Promise<void> => setTold(await commands.openPhrases(await file.text()));
  return (
    <>
      <div className="own-buttons">
        <button type="button" className="tool" disabled={none} onClick={() => void commands.savePhrases()}>
          Save my phrases
        </button>
        <FileButton
          text="Open phrases"
          label="File with phrases"
          accept=".json,application/json"
          onFile={(file) => void read(file)}
        />
      </div>
      <div role="status">
        {told.map((sentence) => (
          <p key={sentence} className="hint">
            {sentence}
          </p>
        ))}
      </div>
    </>
  );
};
