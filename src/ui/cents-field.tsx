import { useState } from 'react';
import { readCents } from '../core/harp/read-cents';

interface Props {
  readonly label: string;
  readonly cents: number;
  /** Gets a deviation within the range on offer. */
  readonly onChange: (cents: number) => void;
}

/** The cents of one reed, typed: taken over when the field is left or on Enter; what cannot be read is dropped. */
export const CentsField = ({ label, cents, onChange }: Props) => {
  const [draft, setDraft] = useState<string | null>(null);
  const shown = String(Math.round(cents)).replace('-', '−');
  const commit = (): void => {
    if (draft === null) return;
    setDraft(null);
    const typed = readCents(draft);
    if (typed !== null && draft !== shown) onChange(typed);
  };
  return (
    <input
      className="text-box"
      inputMode="text"
      autoComplete="off"
      aria-label={label}
      value={draft ?? shown}
      onChange={(event) => setDraft(event.target.value)}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit();
        if (event.key === 'Escape' && draft !== null) {
          event.stopPropagation();
          setDraft(null);
        }
      }}
    />
  );
};
