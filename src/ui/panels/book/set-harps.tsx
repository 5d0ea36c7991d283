import type { GigSet } from '../../../core/book/gig-set';
import { fewestSwaps, harpSwaps, harpsOfSet, replacementsOf } from '../../../core/book/set-harps';
import { elementAt } from '../../../core/theory/element-at';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { useSetSongs } from './use-set-songs';

const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);

/** Offers the order in which the harp changes least. */
const FewerSwaps = ({ set }: { readonly set: GigSet }) => {
  const { commands } = useSession();
  const songs = useSetSongs(set);
  const whole = songs.flatMap((song) => song ?? []);
  if (whole.length !== songs.length) return null;
  const order = fewestSwaps(whole);
  const before = harpSwaps(whole);
  const after = harpSwaps(order.map((index) => elementAt(whole, index)));
  return (
    <>
      <p>The harp changes {before === 0 ? 'never' : times(before)}.</p>
      {after < before && (
        <button
          type="button"
          className="tool"
          onClick={() =>
            commands.keepSet({ ...set, entries: order.map((index) => elementAt(set.entries, index)) })
          }
        >
          Reorder: change {after === 0 ? 'never' : times(after)}
        </button>
      )}
    </>
  );
};

/** The harps to lay out for a set, which of them are missing, and what could stand in. */
export const SetHarps = ({ set }: { readonly set: GigSet }) => {
  const names = useNames();
  const harpCase = useSelected((state) => state.harpCase);
  const technique = useSelected((state) => state.settings.technique);
  const songs = useSetSongs(set).flatMap((song) => song ?? []);
  if (songs.length === 0) return null;
  const harps = harpsOfSet(songs, harpCase);
  const known = harpCase.length > 0;
  return (
    <section className="group">
      <h3>Harps to lay out</h3>
      <ul className="rows">
        {harps.map(({ name, songs: titles, owned }) => (
          <li key={name} className="row">
            <span>
              <strong>{names.key(name)}</strong>
              {known && !owned && ' (not in your case)'}: {titles.join(', ')}
            </span>
          </li>
        ))}
      </ul>
      <FewerSwaps set={set} />
      {known &&
        replacementsOf(songs, harpCase, technique).map(({ song, missing, instead }) => (
          <p key={song} className="hint">
            {song} without the {names.key(missing)}:{' '}
            {instead === null
              ? 'nothing in the case stands in.'
              : `${names.key(instead.harp)}, ${instead.position}: ${names.text(instead.why)}.`}
          </p>
        ))}
      {!known && (
        <p className="hint">Put your harps into the case (under Harp) and the missing ones are named here.</p>
      )}
    </section>
  );
};
