import { useState } from 'react';
import { isOnStand } from '../../../core/book/book-song';
import { findKept } from '../../../core/phrasebook/kept-phrase';
import { songTitle } from '../../../core/song/song-files';
import { DeletedLine } from '../../controls/deleted-line';
import { Panel } from '../../controls/panel';
import { TextField } from '../../controls/text-field';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { KeepOffer } from './keep-offer';
import { NameField } from './name-field';
import { SongCard } from './song-card';
import { SongLink } from './song-link';

/** From so many songs on there is a field to find one. */
const WORTH_SEARCHING = 6;

/** Songs shown at first, and how many more each time: what a song comes to is worked out song by song. */
const SHOWN = 24;

/** Keeps what is on the stand: again under its name where it came from the book, or under a new one. */
const KeepSong = () => {
  const { commands } = useSession();
  const names = useNames();
  const settings = useSelected((state) => state.settings);
  const tune = useSelected((state) => state.tune);
  const { songs, onStand } = useSelected((state) => state.book);
  const song = songs.find(({ id }) => id === onStand);
  return (
    <section className="group">
      <h3>On the stand</h3>
      {song !== undefined && (
        <p>
          <strong>{song.name}</strong>
          {isOnStand(settings, song) ? ', as it is kept.' : ', changed since it was kept.'}
        </p>
      )}
      {song !== undefined && !isOnStand(settings, song) && (
        <div className="own-buttons">
          <button type="button" className="tool" onClick={() => commands.keepSongAgain(song.id)}>
            Keep “{song.name}” as it is now
          </button>
          <button type="button" className="tool" onClick={() => commands.openSong(song.id)}>
            Back to how it was kept
          </button>
        </div>
      )}
      <NameField
        label="Keep as a new song called"
        placeholder={songTitle(settings, tune, names)}
        button="Keep song"
        onName={commands.keepSong}
      />
      <SongLink song={null} />
    </section>
  );
};

/** The songs of the player's book. */
export const SongsPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const { songs, dropped } = useSelected((state) => state.book);
  const [typed, setTyped] = useState('');
  const [shown, setShown] = useState(SHOWN);
  const found = findKept(songs, typed);
  return (
    <Panel title="Songs" onClose={onClose}>
      <KeepOffer />
      <KeepSong />
      <section className="group">
        <h3>Your songs</h3>
        <DeletedLine
          name={dropped?.kind === 'song' ? dropped.song.name : null}
          onBack={commands.restoreDropped}
        />
        {songs.length === 0 && (
          <p className="hint">
            None yet. A song keeps all that the stand holds: form or chart, key, harp, position, feel, tempo,
            players, plan and take, what is practised over it, and your notes in words.
          </p>
        )}
        {songs.length >= WORTH_SEARCHING && (
          <TextField label="Find by name, tag or written words" search value={typed} onChange={setTyped} />
        )}
        {songs.length > 0 && found.length === 0 && <p role="status">No song has all of these words.</p>}
        <ul className="rows">
          {found.slice(0, shown).map((song) => (
            <SongCard key={song.id} song={song} />
          ))}
        </ul>
        {found.length > shown && (
          <button type="button" className="tool" onClick={() => setShown(shown + SHOWN)}>
            Show more ({found.length - shown})
          </button>
        )}
      </section>
    </Panel>
  );
};
