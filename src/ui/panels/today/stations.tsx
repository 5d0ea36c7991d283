import { STATIONS } from '../../../core/song/path-stations';
import { useSession } from '../../state/session-context';

/** Twelve stations for a beginner, each put on the stand in one press. */
export const Stations = ({ onStart }: { readonly onStart: () => void }) => {
  const { commands } = useSession();
  return (
    <>
      <p className="hint">
        Twelve small stations, in an order that has served many. Take any; nothing is locked. Each sets the
        stand up for itself, and Undo brings back what stood there. After a quarter of an hour let lips and
        breath rest.
      </p>
      <ol className="rows">
        {STATIONS.map(({ title, task, why, choices }, i) => (
          <li key={title} className="book-card">
            <strong>
              {i + 1}. {title}
            </strong>
            <p>{task}</p>
            <p className="hint">{why}</p>
            <div className="row">
              <button
                type="button"
                className="tool"
                aria-label={`Set the stand up for ${title}`}
                onClick={() => {
                  commands.choose(choices);
                  onStart();
                }}
              >
                Set the stand up
              </button>
            </div>
          </li>
        ))}
      </ol>
    </>
  );
};
