import type { BendPractice } from '../../../app/bends/bend-practice';
import { type BendFigures, figuresOf } from '../../../core/bends/bend-results';
import { bendTargets } from '../../../core/bends/bend-targets';
import { soundId, spokenTab, tab } from '../../../core/harp/tab';
import { signedCents } from '../../../core/theory/temperament';
import { Switch } from '../../controls/switch';
import { useSelected } from '../../state/session-context';
import { useBendResults } from './use-bend-results';

const centsText = ({ cents }: BendFigures): string =>
  cents === null ? '' : `${signedCents(cents.mean)} ± ${Math.round(cents.spread)}`;

/** What results say of each sound of the harp in hand, and whether they decide what is in reach. */
export const ReachTable = ({ practice }: { readonly practice: BendPractice }) => {
  const harp = useSelected((state) => state.tune.harp);
  const style = useSelected((state) => state.settings.tabStyle);
  const { byResults } = useSelected((state) => state.settings.bends);
  const results = useBendResults();
  const tried = bendTargets(harp).flatMap((sound) => {
    const kept = results.get(soundId(sound));
    return kept === undefined ? [] : [{ sound, kept, figures: figuresOf(kept) }];
  });
  return (
    <>
      <Switch
        label="Let results decide what is in reach"
        on={byResults}
        hint="What is steady or coming is then used by fit, lines and calls, and what does not come yet is left out, each time with a sentence about it. Sounds you have not practised stay as you set them. The drawings of the harp show how far each has come."
        onChange={practice.followResults}
      />
      {tried.length === 0 && <p className="hint">Nothing kept yet of this harp.</p>}
      {tried.length > 0 && (
        <>
          <table className="bend-results">
            <thead>
              <tr>
                <th scope="col">Sound</th>
                <th scope="col">How far</th>
                <th scope="col">Hits</th>
                <th scope="col">Cents</th>
                <th scope="col">Settles</th>
                <td />
              </tr>
            </thead>
            <tbody>
              {tried.map(({ sound, kept, figures }) => (
                <tr key={kept.id}>
                  <th scope="row">
                    <span aria-hidden="true">{tab(sound, style)}</span>
                    <span className="unseen">{spokenTab(sound)}</span>
                  </th>
                  <td>{figures.standing ?? 'five tries tell'}</td>
                  <td>
                    {figures.hits} of {figures.tries}
                    {figures.marked > 0 && `, ${figures.marked} by your word`}
                  </td>
                  <td>{centsText(figures)}</td>
                  <td>{figures.settling !== null && `${figures.settling.toFixed(1)} s`}</td>
                  <td>
                    <button
                      type="button"
                      className="plain"
                      aria-label={`Delete the results of ${spokenTab(sound)}`}
                      onClick={() => practice.forget(sound)}
                    >
                      Delete
                    </button>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="hint">
            The latest ten tries count: steady from eight hits of ten, coming from three. Cents are mean and
            spread from the target. Kept in this browser for this kind of harp.
          </p>
          <button type="button" className="tool" onClick={() => practice.forget(null)}>
            Delete all results of this harp
          </button>
        </>
      )}
    </>
  );
};
