import { useMemo } from 'react';
import { advise } from '../core/harp/advice';
import { buildOwnedHarp, type OwnedHarp } from '../core/harp/harp-case';
import { PITCH_CLASSES, prettyName } from '../core/theory/pitch';
import { useSelected, useSession } from './session-context';

/** Rows shown; the rest are worse. */
const SHOWN = 6;

/** Ranks the player's harps for the song as it stands, with reasons; without a case, the twelve usual keys. */
export const HarpAdvice = () => {
  const { commands } = useSession();
  const chart = useSelected((state) => state.tune.chart);
  const harpCase = useSelected((state) => state.harpCase);
  const settings = useSelected((state) => state.settings);
  const { technique, tuning, intonation, reference, valved } = settings;
  const owned = useMemo<readonly OwnedHarp[]>(
    () =>
      harpCase.length > 0
        ? harpCase
        : PITCH_CLASSES.map((key) => ({
            id: `key-${key}`,
            name: '',
            tuning,
            key,
            octave: 0,
            intonation,
            reference,
            valved,
          })),
    [harpCase, tuning, intonation, reference, valved],
  );
  const rows = useMemo(
    () => advise({ chart, harps: owned.map(buildOwnedHarp), technique }).slice(0, SHOWN),
    [chart, owned, technique],
  );
  const take = (index: number): void => {
    const harp = owned[index];
    if (harp === undefined) return;
    commands.choose({ songPinned: true });
    commands.takeHarp(harp);
    commands.choose({ songPinned: settings.songPinned });
  };
  return (
    <>
      <p className="hint">
        {harpCase.length > 0
          ? 'From your case, for this chart in its key, with what you can play.'
          : 'Your case is empty, so all twelve keys are compared, for this chart and what you can play.'}
      </p>
      <ol className="rows">
        {rows.map(({ harpIndex, reasons, score }) => (
          <li key={harpIndex} className="advice">
            <p>
              <strong>{prettyName(reasons[0] ?? '')}</strong>
            </p>
            {reasons.slice(1).map((reason) => (
              <p key={reason}>{prettyName(reason.charAt(0).toUpperCase() + reason.slice(1))}.</p>
            ))}
            <div className="row">
              <span className="label">{Math.round(score * 100)} of 100</span>
              <button type="button" className="tool" onClick={() => take(harpIndex)}>
                Take this harp
              </button>
            </div>
          </li>
        ))}
      </ol>
    </>
  );
};
