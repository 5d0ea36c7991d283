import { useSelected, useSession } from '../state/session-context';

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
            {job.song !== undefined && `Song ${job.song.number} of ${job.song.of}: `}
            Making <strong>{job.fileName}</strong>, {Math.floor(job.share * 100)} %
          </p>
          {job.song !== undefined && (
            <progress
              aria-label="Making the set"
              value={(job.song.number - 1 + job.share) / job.song.of}
              max={1}
            />
          )}
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
