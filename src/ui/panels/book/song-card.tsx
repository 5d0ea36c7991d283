import { memo, useId, useState } from 'react';
import { type BookSong, SONG_LIMITS } from '../../../core/book/book-song';
import { songFacts } from '../../../core/book/song-facts';
import { tagsOf } from '../../../core/theory/kept-tags';
import { LONGEST_NAME } from '../../../core/theory/kept-text';
import { useSelected, useSession } from '../../state/session-context';
import { SongFactsLine } from './song-facts-line';
import { SongLink } from './song-link';

/** A text that is kept when it is left, so that nothing is rewritten while it is typed. */
const LazyText = ({
  label,
  value,
  onLeave,
  longest,
  long = false,
}: {
  readonly label: string;
  readonly value: string;
  readonly onLeave: (text: string) => void;
  readonly longest: number;
  readonly long?: boolean;
}) => {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const given = {
    id,
    className: 'text-box',
    maxLength: longest,
    value: typed ?? value,
    onChange: (event: { readonly target: { readonly value: string } }) => setTyped(event.target.value),
    onBlur: () => {
      if (typed !== null && typed !== value) onLeave(typed);
      setTyped(null);
    },
  };
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {long ? <textarea rows={3} {...given} /> : <input {...given} />}
    </div>
  );
};

const SongDetails = ({ song }: { readonly song: BookSong }) => {
  const { commands } = useSession();
  return (
    <div className="group">
      <LazyText
        label="Name"
        value={song.name}
        longest={LONGEST_NAME}
        onLeave={(name) => commands.changeSong(song.id, { name: name.trim() || song.name })}
      />
      <LazyText
        label="Notes"
        value={song.words}
        longest={SONG_LIMITS.words}
        long
        onLeave={(words) => commands.changeSong(song.id, { words })}
      />
      <LazyText
        label="Tags, with commas between"
        value={song.tags.join(', ')}
        longest={200}
        onLeave={(text) => commands.changeSong(song.id, { tags: tagsOf(text) })}
      />
      <SongLink song={song.id} />
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => commands.duplicateSong(song.id)}>
          Duplicate
        </button>
        <button type="button" className="tool" onClick={() => commands.dropSong(song.id)}>
          Delete
        </button>
      </div>
    </div>
  );
};

/** One song of the book: what it comes to, the way onto the stand, and its name, notes and tags. */
export const SongCard = memo(({ song }: { readonly song: BookSong }) => {
  const { commands } = useSession();
  const ownCharts = useSelected((state) => state.ownCharts);
  const onStand = useSelected((state) => state.book.onStand === song.id);
  const [open, setOpen] = useState(false);
  return (
    <li className="book-card" data-on-stand={onStand}>
      <div className="row">
        <strong>{song.name}</strong>
        <button
          type="button"
          className="tool"
          aria-label={`Put ${song.name} on the stand`}
          onClick={() => commands.openSong(song.id)}
        >
          Open
        </button>
        <button
          type="button"
          className="plain"
          aria-expanded={open}
          aria-label={`More about ${song.name}`}
          onClick={() => setOpen(!open)}
        >
          More
        </button>
      </div>
      <SongFactsLine facts={songFacts(song, ownCharts)} />
      {song.words !== '' && !open && <p className="book-words">{song.words}</p>}
      {song.tags.length > 0 && !open && <p className="hint">{song.tags.join(' · ')}</p>}
      {open && <SongDetails song={song} />}
    </li>
  );
});
SongCard.displayName = 'SongCard';
