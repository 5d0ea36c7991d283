import { useId } from 'react';

interface Props {
  readonly label: string;
  readonly on: boolean;
  readonly onChange: (on: boolean) => void;
  readonly hint?: string;
}

/** A labelled setting that is on or off. */
export const Switch = ({ label, on, onChange, hint }: Props) => {
  const id = useId();
  return (
    <div className="switch">
      <input
        id={id}
        type="checkbox"
        checked={on}
        aria-describedby={hint === undefined ? undefined : `${id}-hint`}
        onChange={(event) => onChange(event.target.checked)}
      />
      <label htmlFor={id}>{label}</label>
      {hint !== undefined && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
    </div>
  );
};
