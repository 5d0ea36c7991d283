import { harpName } from '../../core/fit/advice-words';
import { songKeyOf } from '../../core/song/tune';
import { keyName, prettyName } from '../../core/theory/pitch';
import { useSelected, useSession } from '../state/session-context';

/** Offers the song that came with the page's address; nothing changes until the player says so. */
export const LinkedSong = () => {
  const { commands } = useSession();
  const song = useSelected((state) => state.book.linked);
  if (song === null) return null;
  const { harpKey, harpOctave, tuning } = song.choices;
  const harp = harpName({ key: harpKey, octave: harpOctave, tuning });
  const key = keyName(songKeyOf(song.choices), song.chart?.mode ?? 'major');
  return (
    <div className="notice">
      <p>
        A song came with the link: <strong>{song.name}</strong>, in {prettyName(key)}, {prettyName(harp)}.
        Opening it puts it on the stand and into your book.
      </p>
      <button type="button" className="tool" onClick={commands.takeLinkedSong}>
        Open it
      </button>
      <button type="button" className="tool" onClick={commands.leaveLinkedSong}>
        Leave it
      </button>
    </div>
  );
};
