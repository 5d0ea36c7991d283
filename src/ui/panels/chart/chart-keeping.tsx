import type { OwnChart } from '../../../core/chart-text/own-chart';
import type { ListedChart } from '../../../core/song/chart-drafts';
import { keyName, pitchClassOf } from '../../../core/theory/pitch';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

interface Props {
  readonly own: OwnChart;
  readonly standing: ListedChart['standing'];
  readonly onDeleted: () => void;
}

const STANDINGS: Readonly<Record<ListedChart['standing'], string>> = {
  saved: 'Saved.',
  unwritten:
    'The band plays it, but it is not written yet: the browser takes nothing more for this page now. The page tries again by itself; copy the text to be safe.',
  changed: 'Changed since it was saved; the band plays it as saved.',
  new: 'Not saved yet. Saving puts it under Form and plays it.',
};

/** Whether the band plays this chart, in which key, and how to have it otherwise. */
const Playing = ({ own }: { readonly own: OwnChart }) => {
  const { commands } = useSession();
  const names = useNames();
  const formId = useSelected((state) => state.settings.formId);
  const song = useSelected((state) => state.tune.chart.key);
  const written = pitchClassOf(own.tonic);
  if (formId !== own.id) {
    return (
      <button type="button" className="tool" onClick={() => commands.chooseForm(own.id)}>
        Play this chart
      </button>
    );
  }
  if (song === written) return null;
  return (
    <button type="button" className="tool" onClick={() => commands.chooseSongKey(written)}>
      Play it in {names.key(own.tonic)}, not in {names.key(keyName(song, own.mode))}
    </button>
  );
};

/** Saves and deletes a chart, and says how it stands. */
export const ChartKeeping = ({ own, standing, onDeleted }: Props) => {
  const { commands } = useSession();
  const remove = (): void => {
    commands.deleteChart();
    onDeleted();
  };
  return (
    <div className="chart-keeping">
      <p className="hint">{STANDINGS[standing]}</p>
      <button
        type="button"
        className="tool main"
        aria-disabled={standing === 'saved'}
        onClick={() => {
          if (standing !== 'saved') commands.saveChart();
        }}
      >
        Save
      </button>
      {standing !== 'new' && <Playing own={own} />}
      <button type="button" className="tool" onClick={remove}>
        Delete
      </button>
    </div>
  );
};
