import { type KeyboardEvent, useId, useMemo, useRef } from 'react';
import { type OwnChart, readOwnChart } from '../../../core/chart-text/own-chart';
import type { ListedChart } from '../../../core/song/chart-drafts';
import type { History } from '../../../core/song/history';
import { LONGEST_NAME } from '../../../core/theory/kept-text';
import { useSession } from '../../state/session-context';
import { ChartKeeping } from './chart-keeping';
import { ChartKey } from './chart-key';
import { ChartReadingView } from './chart-reading';
import { ChartSimplifications } from './chart-simplifications';
import { ChartText, type TextSelection } from './chart-text';
import { ChartTools } from './chart-tools';

interface Props {
  readonly draft: History<OwnChart>;
  readonly standing: ListedChart['standing'];
  readonly onDeleted: () => void;
}

/** The text fields' own undo does not know of transposing and the like; the draft's does. */
const useUndoKeys = (): ((event: KeyboardEvent) => void) => {
  const { commands } = useSession();
  return (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    if (key !== 'z' && key !== 'y') return;
    event.preventDefault();
    if (key === 'y' || event.shiftKey) commands.redoChart();
    else commands.undoChart();
  };
};

/** A chart's name, key and text, with what is understood of it. */
export const ChartEditor = ({ draft, standing, onDeleted }: Props) => {
  const { commands } = useSession();
  const id = useId();
  const own = draft.present;
  const reading = useMemo(() => readOwnChart(own), [own]);
  const text = useRef<TextSelection>(null);
  const onKeyDown = useUndoKeys();
  return (
    <>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the fields inside take the keys; this adds undo to all of them */}
      <div className="group chart-editor" onKeyDown={onKeyDown}>
        <div className="field">
          <label htmlFor={`${id}-name`}>Name</label>
          <input
            id={`${id}-name`}
            className="text-box"
            value={own.name}
            maxLength={LONGEST_NAME}
            onChange={(event) => commands.editChart({ name: event.target.value })}
          />
        </div>
        <ChartKey own={own} says={reading.says} />
        <ChartText ref={text} own={own} problems={reading.problems} bars={reading.bars.length} />
        <ChartTools draft={draft} />
        <ChartKeeping own={own} standing={standing} onDeleted={onDeleted} />
      </div>
      <ChartReadingView
        reading={reading}
        onSelect={(place) => text.current?.select(place)}
        onRewrite={(written) => commands.editChart({ text: written })}
      />
      <ChartSimplifications chart={reading.chart} />
    </>
  );
};
