import { harpName } from '../../core/fit/advice-words';
import { songKeyOf } from '../../core/song/tune';
import { keyName } from '../../core/theory/pitch';
import { useSelected, useSession } from '../state/session-context';
import { useNames } from '../state/use-names';

/** Offers the song that came with the page's address; nothing changes until the player says so. */
export const LinkedSong = () => {
  const { commands } = useSession();
  const names = useNames();
  const { linked: song, linkedStand } = useSelected((state) => state.book);
  if (song === null) return null;
  const { harpKey, harpOctave, tuning } = song.choices;
  const harp = harpName({ key: harpKey, octave: harpOctave, tuning });
  const key = keyName(songKeyOf(song.choices), song.chart?.mode ?? 'major');
  return (
    <div className="notice">
      <p>
        A {linkedStand === null ? 'song' : 'set-up'} came in: <strong>{song.name}</strong>, in{' '}
        {names.key(key)}, {names.key(harp)}. Opening it puts it on the stand and into your book
        {linkedStand === null
          ? '.'
          : '; what is in reach, the mix and the drawing of the harp come with it unless you take the song alone.'}
      </p>
      <button type="button" className="tool" onClick={() => commands.takeLinkedSong(true)}>
        Open it
      </button>
      {linkedStand !== null && (
        <button type="button" className="tool" onClick={() => commands.takeLinkedSong(false)}>
          The song alone
        </button>
      )}
      <button type="button" className="tool" onClick={commands.leaveLinkedSong}>
        Leave it
      </button>
    </div>
  );
};
