import { type KeyboardEvent, useMemo, useState } from 'react';
import type { Bar } from '../../../core/chart/chart';
import type { Problem, TextSpan } from '../../../core/chart-text/chart-problems';
import type { ChartReading, ReadBar } from '../../../core/chart-text/read-chart';
import { oneChordABar } from '../../../core/chart-text/unparted';
import { barNumber } from '../../../core/song/bar-place';
import { barName } from '../../chart/chart-view';
import { SpanText } from '../../controls/chord-text';
import { useNames } from '../../state/use-names';

interface Props {
  readonly reading: ChartReading;
  /** Shows a place in the text. */
  readonly onSelect: (span: TextSpan) => void;
}

interface ViewProps extends Props {
  /** Puts another text in the place of the chart's. */
  readonly onRewrite: (text: string) => void;
}

const KINDS: Readonly<Record<Problem['kind'], string>> = {
  unread: 'Not understood',
  adjusted: 'Nearly as written',
};

const Problems = ({
  problems,
  onSelect,
}: {
  readonly problems: readonly Problem[];
  readonly onSelect: Props['onSelect'];
}) => (
  <ul className="problems" aria-label="What to look at">
    {problems.map((problem) => {
      const { kind, line, column, what, advice } = problem;
      return (
        <li key={`${line}/${column}/${what}`}>
          <button type="button" data-kind={kind} onClick={() => onSelect(problem)}>
            <span className="problem-place">
              <b>{KINDS[kind]}</b> line {line}, column {column}
            </span>
            <span>{what}</span>
            <span className="advised">{advice}</span>
          </button>
        </li>
      );
    })}
  </ul>
);

const SIGNS: Readonly<Record<ReadBar['status'], string>> = { read: '', unread: '?', adjusted: '≈' };

const SPOKEN: Readonly<Record<ReadBar['status'], string>> = {
  read: '',
  unread: ', not understood',
  adjusted: ', nearly as written',
};

interface BarProps {
  readonly bar: Bar;
  readonly index: number;
  readonly text: ReadBar | undefined;
  /** Whether tabbing stops here: one bar does, the arrow keys reach the rest. */
  readonly tabStop: boolean;
  readonly onSelect: Props['onSelect'];
}

const UnderstoodBar = ({ bar, index, text, tabStop, onSelect }: BarProps) => {
  const status = text?.status ?? 'read';
  const names = useNames();
  return (
    <li data-status={status}>
      <button
        type="button"
        tabIndex={tabStop ? 0 : -1}
        aria-label={`${barName(bar, index, names)}${SPOKEN[status]}: show it in the text`}
        onClick={() => {
          if (text !== undefined) onSelect(text);
        }}
      >
        <span className="number">
          {bar.place?.bar === 0 ? `${bar.place.section} ` : ''}
          {barNumber(bar, index)} {SIGNS[status]}
        </span>
        <span className="names" data-chords={bar.chords.length}>
          {bar.chords.map((span) => (
            <SpanText key={span.at} span={span} />
          ))}
        </span>
      </button>
    </li>
  );
};

const STEPS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -4,
  ArrowDown: 4,
};

const Bars = ({ reading, onSelect }: Props) => {
  const [focused, setFocused] = useState(0);
  const { bars } = reading.chart;
  const stop = Math.min(focused, bars.length - 1);
  const onKeyDown = (event: KeyboardEvent<HTMLOListElement>): void => {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const to = stop + step;
    if (to < 0 || to >= bars.length) return;
    setFocused(to);
    event.currentTarget.querySelectorAll('button')[to]?.focus();
  };
  return (
    <ol className="understood" data-own-keys="" onKeyDown={onKeyDown}>
      {bars.map((bar, i) => (
        <UnderstoodBar
          key={bar.at}
          bar={bar}
          index={i}
          text={reading.bars[i]}
          tabStop={i === stop}
          onSelect={(place) => {
            setFocused(i);
            onSelect(place);
          }}
        />
      ))}
    </ol>
  );
};

/** What was understood of a chart: every bar as it will sound, what to look at, and what can be mended at once. */
export const ChartReadingView = ({ reading, onSelect, onRewrite }: ViewProps) => {
  const parted = useMemo(() => oneChordABar(reading.source, reading.chart.tonic), [reading]);
  return (
    <section className="group">
      <h3>As the band reads it</h3>
      <Bars reading={reading} onSelect={onSelect} />
      {reading.problems.length > 0 && <Problems problems={reading.problems} onSelect={onSelect} />}
      {parted !== reading.source && (
        <button type="button" className="tool" onClick={() => onRewrite(parted)}>
          Write one chord a bar
        </button>
      )}
    </section>
  );
};
