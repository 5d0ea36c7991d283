import { useEffect, useRef, useState } from 'react';
import { Boundary } from '../../controls/boundary';
import { Panel } from '../../controls/panel';
import { useCharts } from '../../state/draft-context';
import { useSelected, useSession } from '../../state/session-context';
import { ChartEditor } from './chart-editor';
import { ChartHelp } from './chart-help';
import { ChartPicker } from './chart-picker';

/** Opens the chart that is played when nothing else is being written. */
const useOpening = (): void => {
  const { store, commands } = useSession();
  useEffect(() => {
    const { chartDrafts, ownCharts, settings } = store.getState();
    const chosen = ownCharts.find(({ id }) => id === settings.formId);
    if (chartDrafts.open === null && chosen !== undefined) commands.openChart(chosen.id);
  }, [store, commands]);
};

const Deleted = ({ focused }: { readonly focused: boolean }) => {
  const { commands } = useSession();
  const deleted = useSelected((state) => state.chartDrafts.deleted);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (focused) button.current?.focus();
  }, [focused]);
  return (
    <div className="deleted" role="status">
      {deleted !== null && (
        <>
          <p>“{deleted.draft.present.name}” is deleted.</p>
          <button type="button" className="tool" ref={button} onClick={commands.restoreChart}>
            Bring it back
          </button>
        </>
      )}
    </div>
  );
};

/** Where the player writes charts. */
export const ChartPanel = ({ onClose }: { readonly onClose: () => void }) => {
  const { commands } = useSession();
  const { draft, listed, editing } = useCharts();
  const [justDeleted, setJustDeleted] = useState(false);
  useOpening();
  return (
    <Panel title="Your charts" onClose={onClose}>
      <div className="group">
        <ChartPicker open={draft?.present.id ?? null} listed={listed} />
        <Deleted focused={justDeleted && draft === null} />
      </div>
      {draft !== null && (
        <Boundary
          key={editing}
          part={`The chart “${draft.present.name}”`}
          text={draft.present.text}
          tryAgainOn={draft.present}
          onLeave={commands.closeChart}
          actions={
            <button type="button" className="tool" onClick={commands.undoChart}>
              Undo the last change
            </button>
          }
        >
          <ChartEditor
            draft={draft}
            standing={listed.find(({ id }) => id === draft.present.id)?.standing ?? 'new'}
            onDeleted={() => setJustDeleted(true)}
          />
        </Boundary>
      )}
      <ChartHelp />
    </Panel>
  );
};
