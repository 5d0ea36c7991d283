import { type FormEvent, useId, useState } from 'react';
import { LONGEST_NAME } from '../../../core/theory/kept-text';

interface Props {
  readonly label: string;
  /** What is taken where nothing is typed. */
  readonly placeholder: string;
  readonly button: string;
  readonly onName: (name: string) => void;
}

/** A name and the button that uses it; Enter presses the button. */
export const NameField = ({ label, placeholder, button, onName }: Props) => {
  const id = useId();
  const [name, setName] = useState('');
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    onName(name.trim() || placeholder);
    setName('');
  };
  return (
    <form className="save-row" onSubmit={submit}>
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <input
          id={id}
          className="text-box"
          maxLength={LONGEST_NAME}
          placeholder={placeholder}
          value={name}
          onChange={(event) => setName(event.target.value)}
        />
      </div>
      <button type="submit" className="tool">
        {button}
      </button>
    </form>
  );
};
