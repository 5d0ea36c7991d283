import { useEffect, useState } from 'react';
import { sizeText } from '../../../core/theory/quantities';
import { FileButton } from '../../controls/file-button';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';

/** Sound in a file of text takes four letters for three bytes. */
const AS_TEXT = 4 / 3;

/** All that is kept in this browser as one file, and back, here or on another machine. */
export const Everything = () => {
  const { commands } = useSession();
  const takes = useSelected((state) => state.takes.shelf) ?? [];
  const [withTakes, setWithTakes] = useState(false);
  useEffect(() => {
    void commands.readKeptTakes();
  }, [commands]);
  const bytes = takes.reduce((sum, take) => sum + take.bytes, 0);
  const [withChoices, setWithChoices] = useState(true);
  const [told, setTold] = useState<readonly string[]>([]);
  const restore = async (file: File): Promise<void> =>
    setTold(await commands.restoreEverything(await file.text(), withChoices));
  return (
    <section className="group">
      <h3>Everything you keep</h3>
      <p className="hint">
        All that you made or chose in one file: for another machine, or to be safe. Restoring puts it beside
        what is here; nothing here is written over. A SoundFont of yours stays a file of its own.
      </p>
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          onClick={() => void commands.saveEverything(withTakes).then((sentence) => setTold([sentence]))}
        >
          Save everything
        </button>
        <FileButton
          text="Restore from a file"
          label="File with everything"
          accept=".json,application/json"
          onFile={(file) => void restore(file)}
        />
      </div>
      {takes.length > 0 && (
        <Switch
          label={`With the takes you keep: ${takes.length}, ${sizeText(bytes)}`}
          hint={`The file then has some ${Math.ceil((bytes * AS_TEXT) / 1e6)} MB.`}
          on={withTakes}
          onChange={setWithTakes}
        />
      )}
      <Switch label="Set the stand as it is in the file, too" on={withChoices} onChange={setWithChoices} />
      <div aria-live="polite">
        {told.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </section>
  );
};
