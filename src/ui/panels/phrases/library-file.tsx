import { useState } from 'react';
import { FileButton } from '../../controls/file-button';

interface Props {
  /** What is in the files: `phrases`. */
  readonly what: 'phrases' | 'exercises';
  /** Whether there is nothing to save. */
  readonly none: boolean;
  readonly onSave: () => Promise<void>;
  readonly onOpen: (text: string) => Promise<readonly string[]>;
}

/** All of one's own as a file, and such a file taken in. */
export const LibraryFile = ({ what, none, onSave, onOpen }: Props) => {
  const [told, setTold] = useState<readonly string[]>([]);
  const read = async (file: File): Promise<void> => setTold(await onOpen(await file.text()));
  return (
    <>
      <div className="own-buttons">
        <button type="button" className="tool" disabled={none} onClick={() => void onSave()}>
          Save my {what}
        </button>
        <FileButton
          text={`Open ${what}`}
          label={`File with ${what}`}
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
