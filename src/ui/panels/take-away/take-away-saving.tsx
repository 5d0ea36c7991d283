import { useSelected, useSession } from '../../state/session-context';

/** The file being made with a way to stop it, or how the last one went. */
export const Saving = () => {
  const { commands } = useSession();
  const job = useSelected((state) => state.takeAway.job);
  const message = useSelected((state) => state.takeAway.message);
  return (
    <div className="saving">
      {job !== null && (
        <>
          <p>
            Making <strong>{job.fileName}</strong>, {Math.floor(job.share * 100)} %
          </p>
          <progress aria-label={`Making ${job.fileName}`} value={job.share} max={1} />
          <button type="button" className="tool" onClick={commands.cancelSaving}>
            Cancel
          </button>
        </>
      )}
      <div role="status">{message?.tone === 'note' && <p>{message.text}</p>}</div>
      {message?.tone === 'trouble' && (
        <p role="alert" className="wrong">
          {message.text}
        </p>
      )}
    </div>
  );
};
