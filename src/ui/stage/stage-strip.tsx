import { type CSSProperties, useMemo } from 'react';
import { type ChartRun, chartRuns } from '../../core/chart/chart-runs';
import { keyAt } from '../../core/chart/key-at';
import { barChords } from '../../core/song/bar-place';
import type { NoteName } from '../../core/theory/chord';
import type { NoteNames } from '../../core/theory/note-names';
import { namesStyle, SpanText } from '../controls/chord-text';
import { usePractice } from '../state/practice-context';
import { useSelected } from '../state/session-context';
import { useHeardChart } from '../state/use-heard-chart';
import { useNames } from '../state/use-names';
import { linesInView } from './lines-in-view';

const BARS_IN_LINE = 4;
/** Forms of more bars than this always show one line open at a time. */
const SHORT = 16;

/** More chords in the strip than these would be narrower than their own edges. */
const MOST_CHORDS = 24;

/** A bar of more chords shows its first and that it goes on: all of them would be too small to read. */
const MOST_NAMED = 2;

const nameOf = ({ from, bars, chords }: ChartRun, names: NoteNames): string => {
  const said = barChords({ chords }, names);
  return bars === 1 ? `Bar ${from + 1}, ${said}` : `Bars ${from + 1} to ${from + bars}, ${said}`;
};

interface RunProps {
  readonly run: ChartRun;
  readonly current: number | null;
  /** The key note of its section. */
  readonly tonic: NoteName;
}

const Run = ({ run, current, tonic }: RunProps) => {
  const { trading } = usePractice();
  const names = useNames(tonic);
  const within = current === null ? -1 : current - run.from;
  const here = within >= 0 && within < run.bars;
  const shown = run.chords.slice(0, run.chords.length > MOST_NAMED ? 1 : MOST_NAMED);
  const goesOn = shown.length < run.chords.length;
  const named = namesStyle(shown, names);
  return (
    <li
      aria-current={here ? 'true' : undefined}
      aria-label={nameOf(run, names)}
      data-long={named['data-long']}
      data-more={goesOn}
      style={{ ...named.style, '--bars': run.bars } as CSSProperties}
    >
      <span className="strip-names">
        {shown.map((span, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a bar may hold a chord twice
          <SpanText key={i} span={span} tonic={tonic} />
        ))}
        {goesOn && <span aria-hidden="true">…</span>}
      </span>
      <span className="strip-bars" aria-hidden="true">
        {Array.from({ length: run.bars }, (_, i) => (
          <i
            // biome-ignore lint/suspicious/noArrayIndexKey: bars are known by their place
            key={i}
            data-now={i === within}
            data-turn={trading?.turns[run.from + i]}
          />
        ))}
      </span>
    </li>
  );
};

/** The form, or of a long one what is around the line being heard, as a strip, line by line; bars that hold a chord stand together, each with a dash of its own. */
export const StageStrip = () => {
  const chart = useHeardChart();
  const drill = useSelected((state) => state.exercise !== null);
  const current = useSelected((state) => state.now.formBar);
  const lineLength = drill ? chart.bars.length : BARS_IN_LINE;
  const runs = useMemo(() => chartRuns(chart, drill ? undefined : BARS_IN_LINE), [chart, drill]);
  const lines = useMemo(() => {
    const all: ChartRun[][] = Array.from({ length: Math.ceil(chart.bars.length / lineLength) }, () => []);
    for (const run of runs) all[Math.floor(run.from / lineLength)]?.push(run);
    return all;
  }, [runs, chart, lineLength]);
  const nowLine = Math.floor((current ?? 0) / lineLength);
  const counts = lines.map((own) => own.length);
  const [first, last] = drill ? [0, lines.length - 1] : linesInView(counts, nowLine, MOST_CHORDS);
  return (
    <div className="strip" data-long={chart.bars.length > SHORT}>
      {lines.slice(first, last + 1).map((own, i) => {
        const line = first + i;
        const bars = own.reduce((sum, run) => sum + run.bars, 0);
        return (
          <ol
            key={line}
            className="strip-line"
            aria-label={lines.length > 1 ? `Line ${line + 1}` : 'The form'}
            data-now={line === nowLine}
            style={{ '--bars': Math.min(bars, BARS_IN_LINE * 4) } as CSSProperties}
          >
            {own.map((run) => (
              <Run key={run.from} run={run} current={current} tonic={keyAt(chart, run.from).tonic} />
            ))}
          </ol>
        );
      })}
    </div>
  );
};
