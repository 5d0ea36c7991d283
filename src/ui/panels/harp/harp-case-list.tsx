import { useState } from 'react';
import { harpName } from '../../../core/fit/advice-words';
import { buildOwnedHarp, type OwnedHarp } from '../../../core/harp/harp-case';
import { sameHarp } from '../../../core/harp/same-harp';
import { prettyName } from '../../../core/theory/pitch';
import { useSelected, useSession } from '../../state/session-context';

/** How a harp of the case is called: its own name, or what it is. */
const caseName = (harp: OwnedHarp): string => harp.name || prettyName(harpName(buildOwnedHarp(harp)));

/** The harps the player owns. */
export const HarpCaseList = () => {
  const { commands } = useSession();
  const harpCase = useSelected((state) => state.harpCase);
  const settings = useSelected((state) => state.settings);
  const [refused, setRefused] = useState<string | null>(null);
  const add = (): void => {
    const used = new Set(harpCase.map(({ id }) => id));
    let number = harpCase.length + 1;
    while (used.has(`harp-${number}`)) number += 1;
    const harp: OwnedHarp = {
      id: `harp-${number}`,
      name: '',
      tuning: settings.tuning,
      key: settings.harpKey,
      octave: settings.harpOctave,
      intonation: settings.intonation,
      reference: settings.reference,
      stretch: settings.stretch,
      valved: settings.valved,
    };
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
      <ul className="rows">
        {harpCase.map((harp) => (
          <li key={harp.id} className="row">
            <span>{caseName(harp)}</span>
            <button
              type="button"
              className="tool"
              aria-label={`Take the ${caseName(harp)}`}
              onClick={() => commands.takeHarp(harp)}
            >
              Take
            </button>
            <button
              type="button"
              className="tool"
              aria-label={`Remove the ${caseName(harp)}`}
              onClick={() => {
                setRefused(null);
                commands.dropHarp(harp.id);
              }}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <button type="button" className="tool" onClick={add}>
        Put the harp in hand into the case
      </button>
      <p className="hint" role="status">
        {refused}
      </p>
    </>
  );
};
