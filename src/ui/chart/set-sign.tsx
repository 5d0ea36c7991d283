import type { BookSong } from '../../core/book/book-song';
import { harpName } from '../../core/fit/advice-words';
import { useSelected, useSession } from '../state/session-context';
import { useNames } from '../state/use-names';

const harpOf = ({ choices }: BookSong): string =>
  harpName({ key: choices.harpKey, octave: choices.harpOctave, tuning: choices.tuning });

/** The name of the song on the stand with its place in the set, what comes after it, and which harp to pick up. */
export const SetSign = () => {
  const { commands } = useSession();
  const names = useNames();
  const { running, sets, songs } = useSelected((state) => state.book);
  const set = sets.find(({ id }) => id === running?.set);
  if (running === null || set === undefined) return null;
  const songAt = (index: number) => songs.find(({ id }) => id === set.entries[index]?.song);
  const now = songAt(running.index);
  const next = songAt(running.index + 1);
  const last = running.index + 1 >= set.entries.length;
  const what = `${running.index + 1} of ${set.entries.length}`;
  return (
    <section className="set-bar" data-talk={running.talk !== null} aria-label="Set">
      <button
        type="button"
        className="tool"
        disabled={running.index === 0}
        aria-label="Previous song of the set"
        onClick={commands.previousSong}
      >
        Back
      </button>
      <p aria-live="polite">
        <span>{what}</span> <strong>{now?.name ?? 'A song that is gone'}</strong>{' '}
        {last && <span>The last song of the set.</span>}
        {next !== undefined && (
          <span>
            {running.talk === null ? 'Next' : `In ${running.talk} seconds`}: {next.name},{' '}
            {names.key(harpOf(next))}
          </span>
        )}
      </p>
      {running.talk !== null && (
        <button type="button" className="tool" onClick={commands.holdSet}>
          Wait
        </button>
      )}
      <button
        type="button"
        className="tool"
        disabled={last}
        aria-label="Next song of the set"
        onClick={commands.nextSong}
      >
        Next
      </button>
    </section>
  );
};
