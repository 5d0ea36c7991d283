import type { CSSProperties } from 'react';
import type { Chart } from '../../core/chart/chart';
import { type ChartRun, chartRuns } from '../../core/chart/chart-runs';
import { chordsEms } from '../../core/song/chord-ems';
import type { NoteNames } from '../../core/theory/note-names';
import { counted } from '../../core/theory/wording';
import { ChordText } from '../controls/chord-text';
import { useSelected } from '../state/session-context';
import { useNames } from '../state/use-names';

const barsText = ({ bars }: ChartRun): string => counted(bars, 'bar');
const namesOf = ({ chords }: ChartRun, names: NoteNames): string =>
  chords.map(({ chord }) => names.chord(chord)).join(' then ');

/** The chart of a drill: each chord once, with how many bars it is held. */
export const DrillChart = ({ chart }: { readonly chart: Chart }) => {
  const names = useNames();
  const now = useSelected((state) => (state.now.kind === 'chorus' ? state.now.formBar : null));
  return (
    <section className="chart card" aria-label="Chart">
      <ol className="runs">
        {chartRuns(chart).map((run) => {
          const within = now === null ? -1 : now - run.from;
          const here = within >= 0 && within < run.bars;
          return (
            <li
              key={run.from}
              aria-current={here ? 'true' : undefined}
              aria-label={`${namesOf(run, names)}, ${barsText(run)}`}
            >
              <span className="names" style={{ '--ems': chordsEms(run.chords, names) } as CSSProperties}>
                {run.chords.map(({ chord }) => (
                  <ChordText key={chord.symbol} chord={chord} />
                ))}
              </span>
              <span className="run-bars" aria-hidden="true">
                {here ? `bar ${within + 1} of ${run.bars}` : barsText(run)}
              </span>
              <i
                className="run-left"
                style={{ '--done': here ? (within + 1) / run.bars : 0 } as CSSProperties}
              />
            </li>
          );
        })}
      </ol>
    </section>
  );
};
