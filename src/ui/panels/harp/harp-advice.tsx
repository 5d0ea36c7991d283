import { useMemo } from 'react';
import { advise } from '../../../core/fit/advice';
import { choiceWords } from '../../../core/fit/usual-positions';
import { buildOwnedHarp, type OwnedHarp } from '../../../core/harp/harp-case';
import { differentHarps, sameNotes } from '../../../core/harp/same-harp';
import { PITCH_CLASSES } from '../../../core/theory/pitch';
import { capital } from '../../../core/theory/wording';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

/** Rows shown; the rest are worse. */
const SHOWN = 6;

/** Ranks the player's harps for the song as it stands, with reasons; without a case, the twelve usual keys. */
export const HarpAdvice = () => {
  const { commands } = useSession();
  const names = useNames();
  const chart = useSelected((state) => state.tune.chart);
  const inHand = useSelected((state) => state.tune.harp);
  const harpCase = useSelected((state) => state.harpCase);
  const settings = useSelected((state) => state.settings);
  const { technique, tuning, harpOctave, intonation, reference, stretch, valved } = settings;
  const owned = useMemo<readonly OwnedHarp[]>(
    () =>
      harpCase.length > 0
        ? differentHarps(harpCase)
        : PITCH_CLASSES.map((key) => ({
            id: `key-${key}`,
            name: '',
            tuning,
            key,
            octave: harpOctave,
            intonation,
            reference,
            stretch,
            valved,
          })),
    [harpCase, tuning, harpOctave, intonation, reference, stretch, valved],
  );
  const rows = useMemo(() => {
    const harps = owned.map(buildOwnedHarp);
    const held = harps.findIndex((each) => sameNotes(each, inHand));
    return advise({ chart, harps, technique, inHand: held < 0 ? null : held }).slice(0, SHOWN);
  }, [chart, owned, technique, inHand]);
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
          : 'Your case is empty, so all twelve keys are compared, for this chart and what you can play.'}{' '}
        First come the positions players usually try for such a song and what you can play (common practice),
        and among them those that fit better. The fit is 100 when every chord tone and blue note of the song
        lies in every octave of the harp without a bend; a bend counts half or less. Of equal harps the one in
        hand comes first.
      </p>
      <ol className="rows">
        {rows.map(({ harpIndex, reasons, choice, fit }) => (
          <li key={harpIndex} className="advice" data-choice={choice} data-fit={fit}>
            <p>
              <strong>{names.text(reasons[0] ?? '')}</strong>
            </p>
            {reasons.slice(1).map((reason) => (
              <p key={reason}>{names.text(capital(reason))}.</p>
            ))}
            <div className="row">
              <span className="label">
                Fit: {fit} of 100, {choiceWords(choice)}
              </span>
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
