import { useState } from 'react';
import { FORMS } from '../../../core/chart/forms';
import type { ListedChart } from '../../../core/song/chart-drafts';
import { formOf } from '../../../core/song/tune';
import { Choice } from '../../controls/choice';
import { FileButton } from '../../controls/file-button';
import { useSelected, useSession } from '../../state/session-context';

interface Props {
  readonly open: string | null;
  readonly listed: readonly ListedChart[];
}

const NONE = '';

/** Which chart is written, and the ways to a new one. */
export const ChartPicker = ({ open, listed }: Props) => {
  const { commands } = useSession();
  const settings = useSelected((state) => state.settings);
  const ownCharts = useSelected((state) => state.ownCharts);
  const form = formOf(settings, ownCharts);
  const [told, setTold] = useState<readonly string[]>([]);
  const read = async (file: File): Promise<void> =>
    setTold(await commands.openSheet(new Uint8Array(await file.arrayBuffer())));
  const formName = typeof form === 'string' ? FORMS[form].name : form.name;
  const options = listed.map(({ id, name, standing }) => ({
    value: id,
    text:
      standing === 'saved' ? name : `${name} (${standing === 'unwritten' ? 'not written yet' : 'not saved'})`,
  }));
  return (
    <>
      {listed.length === 0 && (
        <p>
          Write your own changes and the whole page works with them: band, map, tab and paper. Begin with an
          empty chart, or with a copy of the form that is chosen now.
        </p>
      )}
      {listed.some(({ id }) => id !== open) && (
        <Choice
          label="Open chart"
          value={open ?? NONE}
          options={open === null ? [{ value: NONE, text: 'Choose a chart' }, ...options] : options}
          onChoose={(id) => {
            if (id !== NONE) commands.openChart(id);
          }}
        />
      )}
      <div className="chart-starts">
        <button type="button" className="tool" onClick={commands.newChart}>
          New
        </button>
        <button type="button" className="tool" onClick={commands.duplicateForm}>
          <span>Duplicate “{formName}”</span>
        </button>
        <FileButton
          text="From a file"
          label="File of sheet music: ABC or MusicXML"
          accept=".abc,.txt,.musicxml,.xml,.mxl"
          onFile={(file) => void read(file)}
        />
      </div>
      <div aria-live="polite">
        {told.map((sentence) => (
          <p key={sentence} className="hint">
            {sentence}
          </p>
        ))}
      </div>
    </>
  );
};
