import type {
  BendProgress,
  BendWeek,
  DayMinutes,
  FunctionWeek,
  SongLadder,
} from '../../../core/log/progress';
import { YEAR_WEEKS, yearUpTo } from '../../../core/log/year';
import { degreeText } from '../../../core/theory/note-names';
import { counted } from '../../../core/theory/wording';
import { Picture, percent } from './picture';

const CELL = 8;

/** How dark a day is drawn, by its minutes; the size of the square says it too. */
const daySize = (minutes: number): number => CELL * Math.min(1, 0.35 + minutes / 45);

/** Minutes by day over the year that ends today. */
export const YearPicture = ({
  days,
  today,
}: {
  readonly days: readonly DayMinutes[];
  readonly today: string;
}) => {
  const shown = yearUpTo(days, today);
  const minutes = Math.round(shown.reduce((sum, day) => sum + day.minutes, 0));
  return (
    <Picture
      label={`Minutes by day over a year: ${minutes} minutes on ${counted(shown.length, 'day')}.`}
      width={YEAR_WEEKS * CELL}
      height={7 * CELL}
      columns={['Day', 'Minutes']}
      rows={shown.toReversed().map(({ day, minutes: of }) => [day, String(Math.round(of))])}
    >
      <rect className="ground" width={YEAR_WEEKS * CELL} height={7 * CELL} />
      {shown.map(({ day, minutes: of, week, weekday }) => {
        const size = daySize(of);
        return (
          <rect
            key={day}
            className="mark"
            x={week * CELL + (CELL - size) / 2}
            y={weekday * CELL + (CELL - size) / 2}
            width={size}
            height={size}
          />
        );
      })}
    </Picture>
  );
};

const WIDE = 320;
const HIGH = 110;

/** Where a value of a series stands across the picture: by its week. */
const across = (week: number, weeks: readonly { readonly week: number }[]): number => {
  const [from, to] = [weeks[0]?.week ?? 0, weeks.at(-1)?.week ?? 0];
  return from === to ? WIDE / 2 : 16 + ((week - from) / (to - from)) * (WIDE - 32);
};

const centsHeight = (cents: number): number =>
  HIGH / 2 - (Math.max(-60, Math.min(60, cents)) / 60) * (HIGH / 2);

const weekCents = ({ cents }: BendWeek): string =>
  cents === null ? 'too few' : `${Math.round(cents.mean)} ± ${Math.round(cents.spread)}`;

/** A bend over the weeks: its cents with their spread as a band, its hits as a line. */
export const BendPicture = ({ bend, name }: { readonly bend: BendProgress; readonly name: string }) => {
  const { weeks, tries, hits } = bend;
  const measured = weeks.filter(({ cents }) => cents !== null);
  const upper = measured.map((each) => [
    across(each.week, weeks),
    centsHeight((each.cents?.mean ?? 0) + (each.cents?.spread ?? 0)),
  ]);
  const lower = measured.map((each) => [
    across(each.week, weeks),
    centsHeight((each.cents?.mean ?? 0) - (each.cents?.spread ?? 0)),
  ]);
  return (
    <Picture
      label={`${name}: hit ${percent(hits / Math.max(1, tries))} of ${tries} tries in ${counted(weeks.length, 'week')}.`}
      width={WIDE}
      height={HIGH}
      columns={['Week', 'Hit', 'Tries', 'Cents']}
      rows={weeks.map((week, i) => [
        String(i + 1),
        percent(week.hits / Math.max(1, week.tries)),
        String(week.tries),
        weekCents(week),
      ])}
    >
      <rect className="ground" width={WIDE} height={HIGH} />
      <line className="rule" x1={0} x2={WIDE} y1={HIGH / 2} y2={HIGH / 2} />
      {measured.length > 1 && (
        <polygon
          className="spread"
          points={[...upper, ...lower.toReversed()].map((at) => at.join(',')).join(' ')}
        />
      )}
      {measured.map((week) => (
        <g key={week.week}>
          <line
            className="whisker"
            x1={across(week.week, weeks)}
            x2={across(week.week, weeks)}
            y1={centsHeight((week.cents?.mean ?? 0) + (week.cents?.spread ?? 0))}
            y2={centsHeight((week.cents?.mean ?? 0) - (week.cents?.spread ?? 0))}
          />
          <circle
            className="mark"
            cx={across(week.week, weeks)}
            cy={centsHeight(week.cents?.mean ?? 0)}
            r={4}
          />
        </g>
      ))}
      <polyline
        className="hits"
        points={weeks
          .map((week) =>
            [across(week.week, weeks), HIGH - 4 - (week.hits / Math.max(1, week.tries)) * (HIGH - 8)].join(
              ',',
            ),
          )
          .join(' ')}
      />
    </Picture>
  );
};

const DASHES = ['none', '7 4', '2 4', '10 3 2 3'];

/** Chord tones over the weeks: a line each of the four that were hit most, told apart by its dashes and its name. */
export const FunctionPicture = ({ weeks }: { readonly weeks: readonly FunctionWeek[] }) => {
  const totals = new Map<string, number>();
  for (const { shares, notes } of weeks)
    for (const [degree, share] of Object.entries(shares))
      totals.set(degree, (totals.get(degree) ?? 0) + share * notes);
  const degrees = [...totals]
    .sort(([, a], [, b]) => b - a)
    .slice(0, DASHES.length)
    .map(([degree]) => degree);
  const notes = weeks.reduce((sum, week) => sum + week.notes, 0);
  const height = (share: number): number => HIGH - 6 - Math.min(1, share * 2) * (HIGH - 12);
  return (
    <Picture
      label={`Chord tones among all notes heard: ${notes} notes in ${counted(weeks.length, 'week')}.`}
      width={WIDE}
      height={HIGH}
      columns={['Week', 'Notes', ...degrees.map(degreeText)]}
      rows={weeks.map(({ notes: of, shares }, i) => [
        String(i + 1),
        String(of),
        ...degrees.map((degree) => percent(shares[degree] ?? 0)),
      ])}
    >
      <rect className="ground" width={WIDE} height={HIGH} />
      {degrees.map((degree, i) => (
        <g key={degree}>
          <polyline
            className="line"
            strokeDasharray={DASHES[i]}
            points={weeks
              .map(({ week, shares }) => [across(week, weeks), height(shares[degree] ?? 0)].join(','))
              .join(' ')}
          />
          <text
            x={across(weeks.at(-1)?.week ?? 0, weeks) - 2}
            y={height(weeks.at(-1)?.shares[degree] ?? 0) - 3}
            textAnchor="end"
          >
            {degreeText(degree)}
          </text>
        </g>
      ))}
    </Picture>
  );
};

/** A song's tempos, one step a day and tempo: filled where all judged choruses were clean. */
export const LadderPicture = ({ ladder }: { readonly ladder: SongLadder }) => {
  const { song, steps, choruses } = ladder;
  const tempos = steps.map(({ tempo }) => tempo);
  const [low, high] = [Math.min(...tempos), Math.max(...tempos)];
  const x = (i: number): number =>
    steps.length === 1 ? WIDE / 2 : 12 + (i / (steps.length - 1)) * (WIDE - 24);
  const y = (tempo: number): number =>
    high === low ? HIGH / 2 : HIGH - 14 - ((tempo - low) / (high - low)) * (HIGH - 28);
  return (
    <Picture
      label={`${song}: ${low === high ? low : `${low} to ${high}`} beats a minute, ${counted(choruses, 'chorus', 'choruses')}.`}
      width={WIDE}
      height={HIGH}
      columns={['Day and tempo', 'Choruses', 'Clean']}
      rows={steps.map((step) => [
        `${step.day}, ${step.tempo}`,
        String(step.choruses),
        step.judged === 0 ? 'not judged' : `${step.clean} of ${step.judged}`,
      ])}
    >
      <rect className="ground" width={WIDE} height={HIGH} />
      <polyline className="line" points={steps.map(({ tempo }, i) => [x(i), y(tempo)].join(',')).join(' ')} />
      {steps.map(({ day, tempo, judged, clean }, i) => (
        <circle
          key={`${day} ${tempo}`}
          className={judged > 0 && clean === judged ? 'mark' : 'open'}
          cx={x(i)}
          cy={y(tempo)}
          r={4}
        />
      ))}
    </Picture>
  );
};
