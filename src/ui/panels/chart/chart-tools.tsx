import type { OwnChart } from '../../../core/chart-text/own-chart';
import { otherSpelling } from '../../../core/chart-text/written-key';
import type { History } from '../../../core/song/history';
import { useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

interface ToolProps {
  readonly text: string;
  readonly label?: string;
  readonly off?: boolean;
  readonly onPress: () => void;
}

/** A button that stays focusable when there is nothing to do, so that the keyboard keeps its place. */
const Tool = ({ text, label, off = false, onPress }: ToolProps) => (
  <button
    type="button"
    className="tool"
    aria-label={label}
    aria-disabled={off}
    onClick={() => {
      if (!off) onPress();
    }}
  >
    {text}
  </button>
);

/** Steps back and on, and the chart in other keys. */
export const ChartTools = ({ draft }: { readonly draft: History<OwnChart> }) => {
  const names = useNames();
  const { commands } = useSession();
  const { tonic, mode } = draft.present;
  const other = otherSpelling(tonic, mode);
  return (
    <div className="chart-tools">
      <Tool text="Undo" off={draft.past.length === 0} onPress={commands.undoChart} />
      <Tool text="Redo" off={draft.future.length === 0} onPress={commands.redoChart} />
      <fieldset>
        <legend className="unseen">Transpose</legend>
        <span className="label" aria-hidden="true">
          Transpose
        </span>
        <Tool text="−" label="Transpose down a semitone" onPress={() => commands.transposeChart(-1)} />
        <Tool text="+" label="Transpose up a semitone" onPress={() => commands.transposeChart(1)} />
      </fieldset>
      {other !== null && <Tool text={`Respell in ${names.key(other)}`} onPress={commands.respellChart} />}
    </div>
  );
};
