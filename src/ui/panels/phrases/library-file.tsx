import { type ChangeEvent, useRef, useState } from 'react';
import { useSelected, useSession } from '../../state/session-context';

/** All phrases of one's own as a file, and such a file taken in. */
export const LibraryFile = () => {
  const { commands } = useSession();
  const none = useSelected((state) => state.phrasebook.phrases.length === 0);
  const picker = useRef<HTMLInputElement>(null);
  const [told, setTold] = useState<readonly string[]>([]);
  const read = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [file] = target.files ?? [];
    if (file) setTold(await commands.openPhrases(await file.text()));
    target.value = '';
  };
  return (
    <>
      <div className="own-buttons">
        <button type="button" className="tool" disabled={none} onClick={() => void commands.savePhrases()}>
          Save my phrases
        </button>
        <button type="button" className="tool" onClick={() => picker.current?.click()}>
          Open phrases
        </button>
      </div>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        aria-label="File with phrases"
        hidden
        onChange={(event) => void read(event)}
      />
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
