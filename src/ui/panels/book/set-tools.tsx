import { type GigSet, setSeconds } from '../../../core/book/gig-set';
import { OPEN_CHORUSES } from '../../../core/book/song-facts';
import { clockText } from '../../../core/theory/quantities';
import { KindChoice } from '../../chart/kind-choice';
import { Saving } from '../../chart/saving';
import { Switch } from '../../controls/switch';
import { useSelected, useSession } from '../../state/session-context';
import { useSetSongs } from './use-set-songs';

const Length = ({ set }: { readonly set: GigSet }) => {
  const songs = useSetSongs(set);
  const seconds = setSeconds(set, (id) => songs.find((song) => song?.id === id)?.facts.seconds ?? 0);
  const open = songs.filter((song) => song?.facts.open).length;
  return (
    <p>
      About <strong>{clockText(seconds)}</strong> with talk.
      {open > 0 &&
        ` ${open === 1 ? 'One song goes' : `${open} songs go`} on until stopped; ${OPEN_CHORUSES} choruses are counted for ${
          open === 1 ? 'it' : 'each'
        }.`}
    </p>
  );
};

/** What is done with a set as a whole. */
export const SetTools = ({ set }: { readonly set: GigSet }) => {
  const { commands } = useSession();
  const running = useSelected((state) => state.book.running?.set === set.id);
  const saving = useSelected((state) => state.takeAway.job !== null);
  return (
    <section className="group">
      {set.entries.length > 0 && <Length set={set} />}
      <Switch
        label="The next song begins by itself"
        on={set.goesOn}
        hint="When a song has ended and the talk after it is over. A song that goes on until stopped waits for you."
        onChange={(goesOn) => commands.keepSet({ ...set, goesOn })}
      />
      <KindChoice hint="Every song becomes a file of its own, numbered and named. Your browser may ask once whether it may hand over several files." />
      <Saving />
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          disabled={set.entries.length === 0 || saving}
          onClick={() => void commands.saveSet(set.id)}
        >
          Save the set as files
        </button>
        <button
          type="button"
          className="tool"
          disabled={set.entries.length === 0}
          onClick={() => (running ? commands.leaveSet() : commands.startSet(set.id))}
        >
          {running ? 'Leave the set' : 'Play the set'}
        </button>
        <button
          type="button"
          className="tool"
          disabled={set.entries.length === 0}
          onClick={() => {
            commands.choosePaper(set.id);
            window.print();
          }}
        >
          Print the set
        </button>
        <button type="button" className="tool" onClick={() => commands.duplicateSet(set.id)}>
          Duplicate
        </button>
        <button type="button" className="tool" onClick={() => commands.dropSet(set.id)}>
          Delete
        </button>
      </div>
    </section>
  );
};
