import { useState } from 'react';
import { FileButton } from '../../controls/file-button';
import { Switch } from '../../controls/switch';
import { useSession } from '../../state/session-context';

/** All that is kept in this browser as one file, and back, here or on another machine. */
export const Everything = () => {
  const { commands } = useSession();
  const [withChoices, setWithChoices] = useState(true);
  const [told, setTold] = useState<readonly string[]>([]);
  const restore = async (file: File): Promise<void> =>
    setTold(await commands.restoreEverything(await file.text(), withChoices));
  return (
    <section className="group">
      <h3>Everything you keep</h3>
      <p className="hint">
        All that you made or chose in one file: for another machine, or to be safe. Restoring puts it beside
        what is here; nothing here is written over. Recordings and a SoundFont of yours stay files of their
        own.
      </p>
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          onClick={() => void commands.saveEverything().then((sentence) => setTold([sentence]))}
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
      <Switch label="Set the stand as it is in the file, too" on={withChoices} onChange={setWithChoices} />
      <div aria-live="polite">
        {told.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </section>
  );
};
