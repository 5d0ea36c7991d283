import { useId, useState } from 'react';
import { printCents, readCents } from '../../core/harp/read-cents';

interface Props {
  readonly label: string;
  readonly cents: number;
  /** Gets a deviation within the range on offer. */
  readonly onChange: (cents: number) => void;
}

/**
 * The cents of one reed, typed: taken over when the field is left or on Enter. What cannot be read stays in the field
 * with a sentence that says why, until it is mended or left with Escape; an emptied field goes back.
 */
export const CentsField = ({ label, cents, onChange }: Props) => {
  const [draft, setDraft] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const hint = useId();
  const shown = printCents(cents);
  const drop = (): void => {
    setDraft(null);
    setTrouble(null);
  };
  const commit = (): void => {
    if (draft === null) return;
    const typed = draft.trim() === '' || draft === shown ? null : readCents(draft);
    if (typeof typed === 'string') setTrouble(typed);
    else drop();
    if (typeof typed === 'number') onChange(typed);
  };
  return (
    <>
      <input
        className="text-box"
        inputMode="text"
        autoComplete="off"
        aria-label={label}
        aria-invalid={trouble !== null}
        aria-describedby={trouble === null ? undefined : hint}
        value={draft ?? shown}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape' && draft !== null) {
            event.stopPropagation();
            drop();
          }
        }}
      />
      {trouble !== null && (
        <span className="hint" id={hint} role="alert">
          {trouble}
        </span>
      )}
    </>
  );
};
