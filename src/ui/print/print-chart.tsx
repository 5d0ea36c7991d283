import type { Bar, Chart } from '../../core/chart/chart';
import { keyAt } from '../../core/chart/key-at';
import { barNumber, sectionSign } from '../../core/song/bar-place';
import { chordSize, PAPER, type PrintPlan, TAB_LINE } from '../../core/song/print-plan';
import { SpanText } from '../controls/chord-text';
import { useNames } from '../state/use-names';

/** A line through the changes, as it stands under the bars. */
export interface PrintedLine {
  readonly name: string;
  /** `tabs[i]` belongs to bar i. */
  readonly tabs: readonly string[];
}

interface Props {
  readonly chart: Chart;
  readonly plan: PrintPlan;
  readonly line?: PrintedLine | undefined;
}

const COLUMN_GAP = 6;
/** Room for a bar's number, in millimetres: three digits. */
const NUMBER_WIDTH = 5.5;

const columnsOf = (bars: readonly Bar[], columns: number): readonly (readonly Bar[])[] => {
  const rows = Math.ceil(bars.length / (4 * columns));
  return Array.from({ length: columns }, (_, i) => bars.slice(i * rows * 4, (i + 1) * rows * 4));
};

/** Tab is set as large as its bar's width allows, between what can still be read and what would shout. */
const tabSize = (tab: string, width: number): number =>
  Math.min(3.6, Math.max(1.9, width / (tab.length * 0.6)));

/** The chart as musicians write it: four bars a line, bar lines, a heavy one at the end. */
export const PrintChart = ({ chart, plan, line }: Props) => {
  const { chartColumns, rowHeight } = plan;
  const names = useNames(chart.tonic);
  const columnWidth = (PAPER.width - (chartColumns - 1) * COLUMN_GAP) / chartColumns;
  const barWidth = columnWidth / 4 - NUMBER_WIDTH - 1;
  return (
    <div className="print-chart" style={{ columnGap: `${COLUMN_GAP}mm` }}>
      {columnsOf(chart.bars, chartColumns).map((bars) => (
        <ol key={bars[0]?.at ?? 0}>
          {bars.map((bar) => {
            const index = chart.bars.indexOf(bar);
            const tab = line?.tabs[index] ?? '';
            return (
              <li
                key={bar.at}
                data-last={index === chart.bars.length - 1}
                style={{
                  minHeight: `${rowHeight + (line === undefined ? 0 : TAB_LINE)}mm`,
                  paddingLeft: `${NUMBER_WIDTH}mm`,
                }}
              >
                <span className="print-number">
                  {bar.place?.bar === 0 && <b>{sectionSign(bar, names)} </b>}
                  {barNumber(bar, index)}
                </span>
                <span
                  className="print-names"
                  style={{ fontSize: `${chordSize(bar, { rowHeight, width: barWidth, names })}mm` }}
                >
                  {bar.chords.map((span) => (
                    <SpanText key={span.at} span={span} tonic={keyAt(chart, index).tonic} />
                  ))}
                </span>
                {tab !== '' && (
                  <span className="print-tab" style={{ fontSize: `${tabSize(tab, barWidth)}mm` }}>
                    {tab}
                  </span>
                )}
              </li>
            );
          })}
        </ol>
      ))}
    </div>
  );
};
