import { type CSSProperties, useCallback, useEffect, useRef } from 'react';
import type { Bar } from '../../core/chart/chart';
import { isDrill } from '../../core/chart/chart-runs';
import { keyAt } from '../../core/chart/key-at';
import { lineTab } from '../../core/lines/line-tab';
import { barChords, barNumber, barPlace, barSign, sectionSign } from '../../core/song/bar-place';
import type { NoteNames } from '../../core/theory/note-names';
import { capital } from '../../core/theory/wording';
import { namesStyle, SpanText } from '../controls/chord-text';
import { laterView } from '../controls/later-view';
import { usePractice } from '../state/practice-context';
import { useSelected, useSession } from '../state/session-context';
import { useBeside } from '../state/use-beside';
import { useFrame } from '../state/use-frame';
import { useHeardChart } from '../state/use-heard-chart';
import { useNames, useNamesIn } from '../state/use-names';
import { holds, useRangeMarks } from './use-range-marks';

const DrillChart = laterView(async () => (await import('./drill-chart')).DrillChart);

const PickUp = laterView(async () => (await import('./pick-up')).PickUp);

const BarHitSigns = laterView(async () => (await import('../ear/bar-hits')).BarHitSigns);

/** How a bar is called: `Bar 5, C7`, or `Verse, bar 5, C7`. */
export const barName = (bar: Bar, index: number, names: NoteNames): string => {
  const place = barPlace(bar, index);
  return `${capital(place)}, ${barChords(bar, names)}`;
};

/** The name of the section that begins with a bar: it says the number 1 as well. */
const SectionName = ({ bar }: { readonly bar: Bar }) => (
  <span className="section-name">{sectionSign(bar, useNames())}</span>
);

const Beats = ({ beats }: { readonly beats: number }) => (
  <span className="beats" aria-hidden="true">
    {Array.from({ length: beats }, (_, i) => (
      // biome-ignore lint/suspicious/noArrayIndexKey: beats have no identity but their place
      <i key={i} />
    ))}
  </span>
);

/** Marks the beat being heard on the current bar, straight on the page: it changes too often to render. */
const useBeatMarks = (): ((list: HTMLOListElement | null) => void) => {
  const { live } = useSession();
  const playing = useSelected((state) => state.status.kind === 'playing');
  const list = useRef<HTMLOListElement | null>(null);
  const shown = useRef('');
  const draw = useCallback(() => {
    const playhead = live.playhead();
    const current = list.current?.querySelector('[aria-current="true"] .beats');
    if (!current) return;
    const beat = playhead?.beat ?? -1;
    const mark = `${playhead?.section.index}/${playhead?.bar}/${beat}`;
    if (mark === shown.current) return;
    shown.current = mark;
    for (const [i, dash] of [...current.children].entries()) dash.setAttribute('data-on', String(i <= beat));
  }, [live]);
  useFrame(playing, draw);
  return (element) => {
    list.current = element;
  };
};

const BARS_IN_LINE = 4;
/** Beyond this many lines the bar's number stands beside its chord. */
const ROOMY_ROWS = 6;

/** Long charts scroll in their frame: the current line stays in sight, and the next where there is room. Nothing else moves. */
const keepInSight = (frame: HTMLElement | null, bar: number | null): void => {
  const item = bar === null ? null : frame?.querySelectorAll('li')[bar];
  if (!frame || !item || frame.scrollHeight <= frame.clientHeight) return;
  const { offsetTop, offsetHeight } = item;
  const below = Math.min(offsetTop, offsetTop + 2 * offsetHeight - frame.clientHeight);
  if (frame.scrollTop > offsetTop) frame.scrollTop = offsetTop;
  else if (frame.scrollTop < below) frame.scrollTop = below;
};

/** The form, four bars to a line. A click moves there; a range to repeat is marked on it. */
const FormView = () => {
  const settings = useSelected((state) => state.settings);
  const current = useSelected((state) =>
    state.now.kind === 'chorus' || state.now.kind === 'rest' ? state.now.formBar : null,
  );
  const next = useSelected((state) => state.next?.formBar ?? null);
  const playing = useSelected((state) => state.status.kind === 'playing');
  const heard = useSelected((state) => state.now.kind !== 'rest');
  const chart = useHeardChart();
  const namesIn = useNamesIn();
  const namesAt = (bar: number): NoteNames => namesIn(keyAt(chart, bar).tonic);
  const report = useSelected((state) => state.ear.report);
  const rows = Math.ceil(chart.bars.length / BARS_IN_LINE);
  const attach = useBeatMarks();
  const frame = useRef<HTMLElement>(null);
  useEffect(() => keepInSight(frame.current, current), [current]);
  const { line, trading } = usePractice();
  const beside = useBeside();
  const tabs = line ? lineTab(line, chart, settings.tabStyle, beside) : [];
  const { marked, waiting, begin, enter, end, leave, click } = useRangeMarks();

  return (
    <section className="chart card" aria-label="Chart" ref={frame}>
      <PickUp chart={chart} />
      <ol
        className="bars"
        ref={attach}
        style={{ '--rows': rows } as CSSProperties}
        data-crowded={rows > ROOMY_ROWS}
        data-playing={playing && heard}
        onPointerUp={end}
        onPointerLeave={leave}
        onPointerCancel={leave}
        onContextMenu={(event) => waiting !== null && event.preventDefault()}
      >
        {chart.bars.map((bar, i) => (
          <li
            key={bar.at}
            aria-label={barName(bar, i, namesAt(i))}
            aria-current={i === current ? 'true' : undefined}
            data-next={i === next}
            data-turn={trading?.turns[i]}
            data-repeat={waiting === null ? holds(marked, i) : waiting === i}
          >
            <button
              type="button"
              className="bar"
              aria-label={`${barName(bar, i, namesAt(i))}: ${playing ? 'go there' : 'start here'}`}
              onPointerDown={(event) => begin(event, i)}
              onPointerEnter={() => enter(i)}
              onClick={(event) => click(event.shiftKey, i)}
            >
              <span className="number">
                {bar.place?.bar === 0 ? <SectionName bar={bar} /> : barNumber(bar, i)}
              </span>
              <span className="names" data-chords={bar.chords.length} {...namesStyle(bar.chords, namesAt(i))}>
                {bar.chords.map((span) => (
                  <SpanText key={span.at} span={span} tonic={keyAt(chart, i).tonic} />
                ))}
              </span>
              {line && <span className="line-tab">{tabs[i]}</span>}
              {report && <BarHitSigns hits={report.heard.bars[report.numbers.indexOf(i)]} />}
              <Beats beats={chart.meter.beats} />
            </button>
            {waiting === i && (
              <span className="repeat-sign" role="status">
                now tap the other end
              </span>
            )}
            {waiting === null && marked?.from === i && (
              <span className="repeat-sign">
                {marked.to === i ? 'repeat' : `repeat to ${barSign(chart.bars[marked.to], marked.to)}`}
              </span>
            )}
          </li>
        ))}
      </ol>
    </section>
  );
};

/** The chart of what is played: a form bar by bar, a drill shortened. */
export const ChartView = () => {
  const exercise = useSelected((state) => state.exercise);
  return exercise !== null && isDrill(exercise.chart) ? <DrillChart chart={exercise.chart} /> : <FormView />;
};
