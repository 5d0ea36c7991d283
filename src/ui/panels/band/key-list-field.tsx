import { useId, useState } from 'react';
import { readKeyList } from '../../../core/theory/key-list';
import { ENGLISH } from '../../../core/theory/note-names';
import { keyName } from '../../../core/theory/pitch';
import { asPitchClass, type PitchClass } from '../../../core/theory/units';
import { useNames } from '../../state/use-names';

interface Props {
  readonly keys: readonly PitchClass[];
  readonly onChange: (keys: readonly PitchClass[]) => void;
}

/** A list of keys as text: `G C F Bb`. What is not a key is said, and the list stays. */
export const KeyListField = ({ keys, onChange }: Props) => {
  const id = useId();
  const names = useNames();
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const commit = (): void => {
    if (draft === null) return;
    const read = readKeyList(draft);
    if (typeof read === 'string') setWrong(read);
    else {
      setWrong(null);
      setDraft(null);
      onChange(read);
    }
  };
  const shown = keys.map((key) => ENGLISH.key(keyName(asPitchClass(key), 'major'))).join(' ');
  return (
    <div className="field">
      <label htmlFor={id}>Keys, one a chorus{names === ENGLISH ? '' : ' (English names)'}</label>
      <input
        id={id}
        className="text-box"
        value={draft ?? shown}
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : `${id}-wrong`}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
        }}
      />
      {wrong !== null && (
        <p className="wrong" role="alert" id={`${id}-wrong`}>
          {wrong}
        </p>
      )}
    </div>
  );
};
