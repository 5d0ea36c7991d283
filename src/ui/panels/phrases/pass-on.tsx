import { useState } from 'react';
import { LONGEST_NAME } from '../../../core/theory/kept-text';
import { FileButton } from '../../controls/file-button';
import { KeptText } from '../../controls/kept-text';
import { TextField } from '../../controls/text-field';
import { useSession } from '../../state/session-context';

/** Opens an exercise that was saved as a file. */
const OpenExercise = () => {
  const { commands } = useSession();
  const [told, setTold] = useState<readonly string[]>([]);
  const read = async (file: File): Promise<void> => setTold(await commands.openSongText(await file.text()));
  return (
    <>
      <FileButton
        text="Open an exercise"
        label="File with an exercise"
        accept=".json,application/json"
        onFile={(file) => void read(file)}
      />
      <div role="status">
        {told.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </>
  );
};

/** The exercise on the stand, whole, as a link or as a file of its own, and such a file opened. */
export const PassOn = () => {
  const { commands } = useSession();
  const [name, setName] = useState('');
  const [link, setLink] = useState<Awaited<ReturnType<typeof commands.linkTo>> | null>(null);
  return (
    <>
      <TextField
        label="What the exercise is called"
        longest={LONGEST_NAME}
        placeholder="Exercise"
        value={name}
        onChange={setName}
      />
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => void commands.linkTo(null).then(setLink)}>
          Make a link to the exercise
        </button>
        <button
          type="button"
          className="tool"
          onClick={() => void commands.saveExercise(name.trim() || 'Exercise')}
        >
          Save the exercise
        </button>
        <OpenExercise />
      </div>
      {link !== null &&
        ('text' in link ? (
          <KeptText
            label={`The exercise as a link, ${Math.ceil(link.text.length / 100) / 10} kB`}
            text={link.text}
          />
        ) : (
          <p role="status">{link.trouble}</p>
        ))}
    </>
  );
};
