import { type ChangeEvent, useRef, useState } from 'react';
import { Switch } from '../../controls/switch';
import { useSession } from '../../state/session-context';

/** All that is kept in this browser as one file, and back, here or on another machine. */
export const Everything = () => {
  const { commands } = useSession();
  const picker = useRef<HTMLInputElement>(null);
  const [withChoices, setWithChoices] = useState(true);
  const [told, setTold] = useState<readonly string[]>([]);
  const restore = async ({ target }: ChangeEvent<HTMLInputElement>): Promise<void> => {
    const [file] = target.files ?? [];
    if (file) setTold(await commands.restoreEverything(await file.text(), withChoices));
    target.value = '';
  };
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
        <button type="button" className="tool" onClick={() => picker.current?.click()}>
          Restore from a file
        </button>
      </div>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        aria-label="File with everything"
        hidden
        onChange={(event) => void restore(event)}
      />
      <Switch label="Set the stand as it is in the file, too" on={withChoices} onChange={setWithChoices} />
      <div aria-live="polite">
        {told.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </section>
  );
};
