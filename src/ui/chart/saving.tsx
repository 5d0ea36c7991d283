import { useSelected, useSession } from '../state/session-context';
import { WorkReport } from './work-report';

/** The file being made with a way to stop it, or how the last one went. */
export const Saving = () => {
  const { commands } = useSession();
  const job = useSelected((state) => state.takeAway.job);
  const message = useSelected((state) => state.takeAway.message);
  const working = job && (
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
    </>
  );
  return (
    <>
      <WorkReport working={working} onCancel={commands.cancelSaving} message={message} />
      {message?.shareable && (
        <button type="button" className="tool" onClick={() => void commands.shareSaved()}>
          Share it
        </button>
      )}
    </>
  );
};
