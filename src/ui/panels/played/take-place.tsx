import { useId, useState } from 'react';
import type { OpenTake } from '../../../app/takes/takes-state';
import { readSeconds } from '../../../core/takes/read-seconds';
import { useSession } from '../../state/session-context';

const tenths = (seconds: number): string => String(Math.round(seconds * 10) / 10);

/** Where in a recording the song on the stand begins, so that it is written under its bars. */
export const TakePlace = ({ take }: { readonly take: OpenTake }) => {
  const { commands } = useSession();
  const { begins, firstNote } = take;
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const id = useId();
  const commit = (): void => {
    if (draft === null) return;
    const read = draft.trim() === '' ? null : readSeconds(draft);
    setWrong(typeof read === 'string' ? read : null);
    if (typeof read === 'string') return;
    setDraft(null);
    void commands.placeRecording(read);
  };
  return (
    <div className="take-place">
      <label htmlFor={id}>Seconds before the first chorus</label>
      <input
        id={id}
        className="text-box"
        inputMode="decimal"
        autoComplete="off"
        value={draft ?? (begins === null ? '' : tenths(begins))}
        aria-invalid={wrong !== null}
        aria-describedby={`${id}-hint`}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => event.key === 'Enter' && commit()}
      />
      {firstNote !== null && (
        <button type="button" className="tool" onClick={() => void commands.placeRecording(firstNote)}>
          At its first note
        </button>
      )}
      <p className="hint" id={`${id}-hint`} role={wrong === null ? undefined : 'alert'}>
        {wrong ??
          'Where it was played to the song on the stand, at its tempo: then it is written under the bars. Leave it empty where it stands for itself.'}
      </p>
    </div>
  );
};
