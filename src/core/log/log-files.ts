/** The log as files to take away. */
import { counted } from '../theory/wording';
import type { LogEntry } from './log-entry';
import { LOG_VERSION, storableEntry } from './read-entry';

/** All entries as JSON, oldest first. */
export const logJson = (entries: readonly LogEntry[]): string =>
  JSON.stringify({ program: 'combshed', log: LOG_VERSION, entries: entries.map(storableEntry) }, null, 1);

/** A field of CSV (RFC 4180, 2.5–2.7): in quotes where it must be, and never a formula where a table is calculated. */
const field = (value: string | number): string => {
  const text = typeof value === 'number' ? String(value) : value.replace(/^(?=[=+\-@\t\r])/, "'");
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

const COLUMNS: readonly (readonly [name: string, of: (entry: LogEntry) => string | number])[] = [
  ['day', ({ day }) => day],
  ['began, milliseconds since 1970', ({ began }) => began],
  ['kind', ({ kind }) => kind],
  ['song', ({ song }) => song],
  ['form', ({ form }) => form],
  ['key', ({ key }) => key],
  ['harp', ({ harp }) => harp],
  ['position', ({ position }) => position],
  ['tempo', ({ laps }) => laps.at(-1)?.tempo ?? ''],
  ['fastest tempo', ({ laps }) => (laps.length === 0 ? '' : Math.max(...laps.map((lap) => lap.tempo)))],
  ['choruses', ({ choruses }) => choruses],
  ['minutes', ({ seconds }) => Math.round(seconds / 6) / 10],
  ['choruses judged', ({ laps }) => laps.reduce((sum, { judged }) => sum + judged, 0)],
  ['choruses clean', ({ laps }) => laps.reduce((sum, { clean }) => sum + clean, 0)],
  ['notes heard', ({ heard }) => heard?.notes ?? ''],
  ['chord tones', ({ heard }) => heard?.chord ?? ''],
  ['blue notes', ({ heard }) => heard?.blue ?? ''],
  ['scale notes', ({ heard }) => heard?.scale ?? ''],
  [
    'chord tones by degree',
    ({ heard }) =>
      Object.entries(heard?.functions ?? {})
        .map(([degree, times]) => `${degree}: ${times}`)
        .join('; '),
  ],
  ['early', ({ heard }) => heard?.early ?? ''],
  ['late', ({ heard }) => heard?.late ?? ''],
  ['notes timed', ({ heard }) => heard?.timed ?? ''],
  ['bends', ({ bends }) => bends.map(({ sound, hits, tries }) => `${sound}: ${hits} of ${tries}`).join('; ')],
  [
    'phrases',
    ({ phrases }) => phrases.map(({ name, passed, tries }) => `${name}: ${passed} of ${tries}`).join('; '),
  ],
];

/** All entries as CSV (RFC 4180), with a row of names first. */
export const logCsv = (entries: readonly LogEntry[]): string =>
  [
    COLUMNS.map(([name]) => field(name)).join(','),
    ...entries.map((entry) => COLUMNS.map(([, of]) => field(of(entry))).join(',')),
  ]
    .map((row) => `${row}\r\n`)
    .join('');

/** What entries come to together. */
export interface LogSum {
  readonly seconds: number;
  /** Whole choruses. */
  readonly choruses: number;
  readonly days: number;
}

/** What entries come to together: a sum each, since thousands of them may be asked for at every opening. */
export const sumOfLog = (entries: readonly LogEntry[]): LogSum => ({
  seconds: entries.reduce((sum, { seconds }) => sum + seconds, 0),
  choruses: entries.reduce((sum, { choruses }) => sum + choruses, 0),
  days: new Set(entries.map(({ day }) => day)).size,
});

/** A time as one says it: `12 seconds`, `1 minute`, `3 hours 20 minutes`. */
const spokenTime = (seconds: number): string => {
  if (seconds < 55) return counted(Math.max(1, Math.round(seconds)), 'second');
  const minutes = Math.round(seconds / 60);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [
    ...(hours > 0 ? [counted(hours, 'hour')] : []),
    ...(rest > 0 ? [counted(rest, 'minute')] : []),
  ].join(' ');
};

/** A sum in two parts of a sentence, the time and the rest: `31 minutes`, `with 12 choruses on 4 days`. */
export const sumInWords = ({ seconds, choruses, days }: LogSum): readonly [time: string, rest: string] => {
  const on = days === 1 ? 'on one day' : `on ${days} days`;
  return [spokenTime(seconds), choruses === 0 ? on : `with ${counted(choruses, 'chorus', 'choruses')} ${on}`];
};
