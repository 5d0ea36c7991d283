import { type Ref, useEffect, useId, useImperativeHandle, useLayoutEffect, useRef, useState } from 'react';
import type { Problem, TextSpan } from '../../../core/chart-text/chart-problems';
import type { OwnChart } from '../../../core/chart-text/own-chart';
import { endOfChange } from '../../../core/song/typing';
import { ENGLISH, type NoteNames } from '../../../core/theory/note-names';
import { counted } from '../../../core/theory/wording';
import { useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

/** Selects a place in the text and brings it into view. */
export interface TextSelection {
  select(span: TextSpan): void;
}

interface Props {
  readonly own: OwnChart;
  readonly problems: readonly Problem[];
  /** Bars of the text. */
  readonly bars: number;
  readonly ref: Ref<TextSelection>;
}

/** How long the hands must rest before a screen reader is told: announcing every letter would drown the typing. */
const REST_MS = 1200;

const useRested = (value: string): string => {
  const [rested, setRested] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setRested(value), REST_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return rested;
};

const places = (count: number): string => counted(count, 'place');

/** What is to be said about a reading, in one line. */
const summaryOf = (problems: readonly Problem[], bars: number): string => {
  const unread = problems.filter(({ kind }) => kind === 'unread').length;
  const adjusted = problems.length - unread;
  const parts = [
    ...(unread > 0 ? [`${places(unread)} not understood`] : []),
    ...(adjusted > 0 ? [`${places(adjusted)} to look at`] : []),
  ];
  return `${counted(bars, 'bar')}. ${parts.length === 0 ? 'All understood.' : `${parts.join(', ')}.`}`;
};

const offsetOf = (text: string, { line, column }: TextSpan): number => {
  const before = text.split('\n').slice(0, line - 1);
  return before.reduce((sum, each) => sum + each.length + 1, 0) + column - 1;
};

const scrollTo = (area: HTMLTextAreaElement, line: number): void => {
  const lines = area.value.split('\n').length;
  const height = area.scrollHeight / Math.max(1, lines);
  area.scrollTop = Math.max(0, (line - 1) * height - area.clientHeight / 2);
};

/** Where the names on the page are not those that are typed. */
const typedAs = ({ note }: NoteNames): string =>
  ['Bb', 'B', 'C']
    .filter((name) => note(name) !== name)
    .map((name) => `${name} for ${note(name)}`)
    .join(', ');

/** The chords as typed. */
export const ChartText = ({ own, problems, bars, ref }: Props) => {
  const { commands } = useSession();
  const id = useId();
  const names = useNames();
  const other = names !== ENGLISH;
  const area = useRef<HTMLTextAreaElement>(null);
  const shown = useRef(own.text);
  const summary = summaryOf(problems, bars);
  const rested = useRested(summary);
  useImperativeHandle(ref, () => ({
    select: (span) => {
      if (area.current === null) return;
      const from = offsetOf(area.current.value, span);
      area.current.focus();
      area.current.setSelectionRange(from, from + span.text.length);
      scrollTo(area.current, span.line);
    },
  }));
  useLayoutEffect(() => {
    if (shown.current === own.text) return;
    const caret = endOfChange(shown.current, own.text);
    shown.current = own.text;
    if (document.activeElement === area.current) area.current?.setSelectionRange(caret, caret);
  }, [own.text]);
  return (
    <div className="field">
      <label htmlFor={id}>Chords</label>
      <textarea
        id={id}
        ref={area}
        className="text-box chart-text"
        value={own.text}
        rows={6}
        placeholder={'| C7 | F7 | C7 | % |'}
        spellCheck={false}
        autoCapitalize="none"
        autoCorrect="off"
        aria-describedby={`${id}-summary`}
        aria-invalid={problems.some(({ kind }) => kind === 'unread')}
        onChange={(event) => {
          shown.current = event.target.value;
          commands.editChart({ text: event.target.value });
        }}
      />
      {other && (
        <p className="hint">
          Chords are typed in English names: {typedAs(names)}. The chart shows them as you chose.
        </p>
      )}
      <p id={`${id}-summary`} className="hint">
        {summary}
      </p>
      <p className="unseen" role="status">
        {rested}
      </p>
    </div>
  );
};
