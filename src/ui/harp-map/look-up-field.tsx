import { useId } from 'react';

interface Props {
  readonly text: string;
  /** Id of the sentence that says what is wrong, or null. */
  readonly wrong: string | null;
  readonly onType: (text: string) => void;
  readonly onLeave: () => void;
}

/** One field that looks a chord or a scale up on the harp in hand; Escape goes back to the song. */
export const LookUpField = ({ text, wrong, onType, onLeave }: Props) => {
  const id = useId();
  return (
    <span className="look-up">
      <label htmlFor={id}>Look up</label>
      <input
        id={id}
        className="text-box"
        value={text}
        placeholder="A♭m, D dorian"
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        aria-invalid={wrong !== null}
        aria-describedby={wrong ?? undefined}
        onChange={(event) => onType(event.target.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || text === '') return;
          event.preventDefault();
          event.stopPropagation();
          onLeave();
          event.currentTarget.blur();
        }}
      />
    </span>
  );
};
