import { useState } from 'react';
import type { Melody } from '../../../core/melody/melody';
import { Choice } from '../../controls/choice';
import { FileButton } from '../../controls/file-button';
import { useSession } from '../../state/session-context';

interface Props {
  readonly melodies: readonly Melody[];
  readonly chosen: number;
  readonly onMelodies: (melodies: readonly Melody[]) => void;
  readonly onChoose: (index: number) => void;
}

/** A melody from a file, and which of several. */
export const MelodyFile = ({ melodies, chosen, onMelodies, onChoose }: Props) => {
  const { commands } = useSession();
  const [trouble, setTrouble] = useState('');
  const read = async (file: File): Promise<void> => {
    const found = await commands.readMelodies(new Uint8Array(await file.arrayBuffer()));
    setTrouble(typeof found === 'string' ? found : '');
    onMelodies(typeof found === 'string' ? [] : found);
  };
  const left = melodies[chosen]?.left ?? [];
  return (
    <>
      <FileButton
        text="Melody from a file"
        label="File with a melody: MIDI, ABC or MusicXML"
        accept=".mid,.midi,.abc,.txt,.musicxml,.xml,.mxl"
        onFile={(file) => void read(file)}
      />
      {melodies.length > 1 && (
        <Choice
          label="Which of its melodies"
          value={chosen}
          options={melodies.map(({ name }, value) => ({ value, text: name }))}
          onChoose={onChoose}
        />
      )}
      <div role="status">
        {trouble !== '' && <p>{trouble}</p>}
        {melodies.length === 1 && <p>“{melodies[0]?.name}” was read.</p>}
        {left.map((sentence) => (
          <p key={sentence} className="hint">
            {sentence}
          </p>
        ))}
      </div>
    </>
  );
};
