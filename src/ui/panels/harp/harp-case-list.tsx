import { useId, useState } from 'react';
import { harpName } from '../../../core/fit/advice-words';
import type { OwnedHarp } from '../../../core/harp/harp-case';
import { sameHarp } from '../../../core/harp/same-harp';
import { harpForCase } from '../../../core/song/harp-in-case';
import { DeletedLine } from '../../controls/deleted-line';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

/** The harps the player owns. */
export const HarpCaseList = () => {
  const { commands } = useSession();
  const names = useNames();
  /** How a harp of the case is called: its own name, or what it is. */
  const caseName = (harp: OwnedHarp): string => harp.name || names.key(harpName(harp));
  const harpCase = useSelected((state) => state.harpCase);
  const settings = useSelected((state) => state.settings);
  const hint = useId();
  const [refused, setRefused] = useState<string | null>(null);
  const [deleted, setDeleted] = useState<OwnedHarp | null>(null);
  const bringBack = (): void => {
    if (deleted !== null) commands.keepHarp(deleted);
    setDeleted(null);
  };
  const add = (): void => {
    const harp = harpForCase(settings, harpCase);
    const twin = harpCase.find((each) => sameHarp(each, harp));
    setRefused(twin === undefined ? null : `This harp is in your case already: ${caseName(twin)}.`);
    if (twin === undefined) commands.keepHarp(harp);
  };
  return (
    <>
      {harpCase.length === 0 && (
        <p className="hint">
          Nothing here yet. Choose a harp key, tuning and range, then put that harp in. Advice for a song then
          counts only the harps you own.
        </p>
      )}
      {harpCase.length > 0 && (
        <p className="hint" id={hint}>
          Take makes a harp the one in hand, with its tuning, range and pitch.
        </p>
      )}
      <ul className="rows">
        {harpCase.map((harp) => (
          <li key={harp.id} className="row">
            <span>{caseName(harp)}</span>
            <button
              type="button"
              className="tool"
              aria-label={`Take the ${caseName(harp)}`}
              aria-describedby={hint}
              onClick={() => commands.takeHarp(harp)}
            >
              Take
            </button>
            <button
              type="button"
              className="tool"
              aria-label={`Delete the ${caseName(harp)}`}
              onClick={() => {
                setRefused(null);
                setDeleted(harp);
                commands.dropHarp(harp.id);
              }}
            >
              Delete
            </button>
          </li>
        ))}
      </ul>
      <DeletedLine name={deleted === null ? null : caseName(deleted)} onBack={bringBack} />
      <button type="button" className="tool" onClick={add}>
        Put the harp in hand into the case
      </button>
      <p className="hint" role="status">
        {refused}
      </p>
    </>
  );
};
