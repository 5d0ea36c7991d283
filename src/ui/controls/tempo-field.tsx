import { useEffect, useId, useState } from 'react';
import { parseTempo } from '../../core/settings/tempo';
import { asEpochMs } from '../../core/theory/units';
import { useSession } from '../state/session-context';
import { useChosen } from '../state/use-chosen';

/** Tempo: typed, stepped or tapped. What cannot be used is said beside it and the tempo stays. */
export const TempoField = () => {
  const { commands } = useSession();
  const tempo = useChosen((settings) => settings.tempo);
  const [draft, setDraft] = useState<string | null>(null);
  const [wrong, setWrong] = useState<string | null>(null);
  const id = useId();
  // biome-ignore lint/correctness/useExhaustiveDependencies: any change of the tempo answers what was wrong
  useEffect(() => setWrong(null), [tempo]);
  const commit = (): void => {
    if (draft === null) return;
    const read = parseTempo(draft);
    setWrong(draft.trim() !== '' && typeof read === 'string' ? read : null);
    if (typeof read !== 'string') commands.typeTempo(draft);
    setDraft(null);
  };
  return (
    <div className="tempo">
      <label className="label" htmlFor={id}>
        Tempo
      </label>
      <div className="tempo-row">
        <button type="button" className="tool" aria-label="Slower" onClick={() => commands.nudgeTempo(-2)}>
          −
        </button>
        <input
          id={id}
          className="text-box"
          inputMode="decimal"
          autoComplete="off"
          value={draft ?? String(Math.round(tempo * 10) / 10)}
          aria-invalid={wrong !== null}
          aria-describedby={wrong === null ? undefined : `${id}-wrong`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={commit}
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') {
              event.preventDefault();
              setDraft(null);
              setWrong(null);
            }
          }}
        />
        <button type="button" className="tool" aria-label="Faster" onClick={() => commands.nudgeTempo(2)}>
          +
        </button>
        <button
          type="button"
          className="tool tap-tempo"
          onClick={(event) => commands.tap(asEpochMs(event.timeStamp))}
        >
          Tap
        </button>
      </div>
      {wrong !== null && (
        <p className="wrong" role="alert" id={`${id}-wrong`}>
          {wrong}
        </p>
      )}
    </div>
  );
};
