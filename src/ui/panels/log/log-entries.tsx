import { useState } from 'react';
import { positionTitle } from '../../../core/harp/positions';
import type { LogEntry } from '../../../core/log/log-entry';
import { songName } from '../../../core/song/song-files';
import { counted } from '../../../core/theory/wording';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';

/** Entries shown at first, and how many more each time. */
const SHOWN = 20;

const DAY = new Intl.DateTimeFormat(undefined, { dateStyle: 'full', timeZone: 'UTC' });

/** A day in the words of the reader's language. */
const dayText = (day: string): string => {
  const at = Date.parse(`${day}T00:00:00Z`);
  return Number.isNaN(at) ? day : DAY.format(at);
};

const long = (seconds: number): string =>
  seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;

/** A few tempos as one: `88`, `88 to 104`. */
const tempos = ({ laps }: LogEntry): string => {
  const all = laps.map(({ tempo }) => tempo);
  const [low, high] = [Math.min(...all), Math.max(...all)];
  return low === high ? `${low}` : `${low} to ${high}`;
};

const heardLine = ({ heard, bends, phrases }: LogEntry): string =>
  [
    heard === null ? '' : `${heard.chord} of ${heard.notes} notes were of their chord`,
    ...bends.map(({ sound, hits, tries }) => `${sound}: ${hits} of ${tries}`),
    ...phrases.map(({ name, passed, tries }) => `${name}: ${passed} of ${tries} clean`),
  ]
    .filter((part) => part !== '')
    .join('; ');

const Entry = ({ entry }: { readonly entry: LogEntry }) => {
  const { commands } = useSession();
  const { song, kind, key, harp, position, choruses, seconds, laps } = entry;
  const heard = heardLine(entry);
  const names = useNames();
  return (
    <li className="log-entry">
      <div>
        <p>
          <strong>{kind === 'song' ? songName(song, names) : song}</strong>, {long(seconds)}
          {kind === 'song' && choruses > 0 && `, ${counted(choruses, 'chorus', 'choruses')}`}
        </p>
        <p className="hint">
          {kind === 'song' && `${names.key(key)}, ${positionTitle(position)}, `}
          {names.key(harp)}
          {laps.length > 0 && `, ${tempos(entry)} beats a minute`}
        </p>
        {heard !== '' && <p className="hint">{heard}</p>}
      </div>
      <button
        type="button"
        className="plain"
        aria-label={`Delete ${song} from the log`}
        onClick={() => commands.dropLog([entry.id])}
      >
        Delete
      </button>
    </li>
  );
};

interface Day {
  readonly day: string;
  readonly entries: LogEntry[];
}

const byDay = (entries: readonly LogEntry[]): readonly Day[] => {
  const days: Day[] = [];
  for (const entry of entries) {
    const last = days.at(-1);
    if (last?.day === entry.day) last.entries.push(entry);
    else days.push({ day: entry.day, entries: [entry] });
  }
  return days;
};

/** The entries of the log, the latest first, day by day. */
export const LogEntries = () => {
  const { commands } = useSession();
  const entries = useSelected((state) => state.log.entries);
  const dropped = useSelected((state) => state.log.dropped.length);
  const [shown, setShown] = useState(SHOWN);
  const latest = entries.slice(-shown).toReversed();
  return (
    <section className="group">
      {dropped > 0 && (
        <p className="row" role="status">
          {dropped === 1 ? 'One entry was deleted.' : `${dropped} entries were deleted.`}{' '}
          <button type="button" className="tool" onClick={commands.restoreLog}>
            Bring back
          </button>
        </p>
      )}
      {byDay(latest).map(({ day, entries: ofDay }) => (
        <div key={`${day} ${ofDay[0]?.id}`} className="log-day">
          <h3>{dayText(day)}</h3>
          <ul>
            {ofDay.map((entry) => (
              <Entry key={entry.id} entry={entry} />
            ))}
          </ul>
        </div>
      ))}
      {entries.length > shown && (
        <button type="button" className="tool" onClick={() => setShown(shown + SHOWN)}>
          Show earlier ones ({entries.length - shown} more)
        </button>
      )}
    </section>
  );
};
