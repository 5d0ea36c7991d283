import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';

/**
 * The one sentence about the last chorus. Its row is there for as long as the microphone listens, so that nothing moves
 * when the sentence comes; it stays until the next one.
 */
export const StageHeard = () => {
  const report = useSelected((state) => state.ear.report);
  const names = useNames();
  const listening = useSelected(
    ({ ear: { status } }) => status.kind === 'listening' || status.kind === 'silent',
  );
  if (!listening) return null;
  return (
    <p className="stage-heard" aria-live="polite">
      {report !== null && (
        <>
          <b>Chorus {report.chorus + 1}:</b> {names.text(report.advice)}
        </>
      )}
    </p>
  );
};
