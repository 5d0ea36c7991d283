import { useState } from 'react';
import {
  type GigSet,
  moveEntry,
  SET_LIMITS,
  withoutEntry,
  withSong,
  withTalk,
} from '../../../core/book/gig-set';
import type { SetSong } from '../../../core/book/set-harps';
import { Choice } from '../../controls/choice';
import { useSelected, useSession } from '../../state/session-context';
import { SongFactsLine } from './song-facts-line';
import { useSetSongs } from './use-set-songs';

interface EntryProps {
  readonly set: GigSet;
  readonly index: number;
  readonly song: SetSong | null;
  readonly dragged: number | null;
  readonly onDrag: (index: number | null) => void;
}

const EntryButtons = ({
  set,
  index,
  name,
}: {
  readonly set: GigSet;
  readonly index: number;
  readonly name: string;
}) => {
  const { commands } = useSession();
  const move = (to: number): void => commands.keepSet(moveEntry(set, index, to));
  return (
    <div className="set-buttons">
      <button
        type="button"
        className="tool"
        aria-label={`Play the set from ${name}`}
        onClick={() => commands.startSet(set.id, index)}
      >
        From here
      </button>
      <button
        type="button"
        className="tool"
        aria-label={`Move ${name} up`}
        disabled={index === 0}
        onClick={() => move(index - 1)}
      >
        Up
      </button>
      <button
        type="button"
        className="tool"
        aria-label={`Move ${name} down`}
        disabled={index === set.entries.length - 1}
        onClick={() => move(index + 1)}
      >
        Down
      </button>
      <button
        type="button"
        className="tool"
        aria-label={`Take ${name} out of the set`}
        onClick={() => commands.keepSet(withoutEntry(set, index))}
      >
        Out
      </button>
    </div>
  );
};

const Entry = ({ set, index, song, dragged, onDrag }: EntryProps) => {
  const { commands } = useSession();
  const running = useSelected(({ book }) => book.running?.set === set.id && book.running.index === index);
  const name = song?.name ?? 'a song that is no longer in the book';
  const last = index === set.entries.length - 1;
  return (
    <li
      className="book-card"
      data-on-stand={running}
      draggable
      onDragStart={() => onDrag(index)}
      onDragEnd={() => onDrag(null)}
      onDragOver={(event) => {
        if (dragged !== null) event.preventDefault();
      }}
      onDrop={() => {
        if (dragged !== null) commands.keepSet(moveEntry(set, dragged, index));
      }}
    >
      <div className="row">
        <strong>
          {index + 1}. {name}
        </strong>
      </div>
      {song !== null && <SongFactsLine facts={song.facts} />}
      <EntryButtons set={set} index={index} name={name} />
      {!last && (
        <label className="talk">
          Talk after it, seconds
          <input
            className="text-box"
            type="number"
            min={0}
            max={SET_LIMITS.talk}
            step={5}
            value={set.entries[index]?.talk ?? 0}
            onChange={(event) => commands.keepSet(withTalk(set, index, event.target.valueAsNumber || 0))}
          />
        </label>
      )}
    </li>
  );
};

/** Adding more than so many songs at once is no set of an evening. */
const MOST_AT_ONCE = 30;

/** Puts every song of a small book that is not in the set yet at its end: an evening is soon put together. */
const TheOthers = ({ set }: { readonly set: GigSet }) => {
  const { commands } = useSession();
  const songs = useSelected((state) => state.book.songs);
  const others = songs.filter(({ id }) => !set.entries.some(({ song }) => song === id));
  if (others.length < 2 || others.length > MOST_AT_ONCE) return null;
  return (
    <button
      type="button"
      className="tool"
      onClick={() => commands.keepSet(others.map(({ id }) => id).reduce(withSong, set))}
    >
      Add {set.entries.length === 0 ? 'all' : 'the other'} {others.length} songs
    </button>
  );
};

/** The songs of a set in order, each moved by drag or by buttons, and the way to add one. */
export const SetEntries = ({ set }: { readonly set: GigSet }) => {
  const { commands } = useSession();
  const songs = useSelected((state) => state.book.songs);
  const entries = useSetSongs(set);
  const [dragged, setDragged] = useState<number | null>(null);
  const options = [
    { value: '', text: songs.length === 0 ? 'Keep songs first' : 'Choose a song' },
    ...songs.map(({ id, name }) => ({ value: id, text: name })),
  ];
  return (
    <section className="group">
      <h3>{set.name}</h3>
      <ol className="rows">
        {entries.map((song, index) => (
          <Entry
            // biome-ignore lint/suspicious/noArrayIndexKey: a song may stand in a set twice, and its place is all that tells.
            key={index}
            set={set}
            index={index}
            song={song}
            dragged={dragged}
            onDrag={setDragged}
          />
        ))}
      </ol>
      <Choice
        label="Add to the set"
        value=""
        options={options}
        onChoose={(id) => {
          if (id !== '') commands.keepSet(withSong(set, id));
        }}
      />
      <TheOthers set={set} />
    </section>
  );
};
