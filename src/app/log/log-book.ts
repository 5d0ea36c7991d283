import type { LogEntry } from '../../core/log/log-entry';
import { readEntry, storableEntry } from '../../core/log/read-entry';
import type { KeptLog, LogRow } from '../../storage/kept-log';
import type { Writing } from '../../storage/kept-values';
import type { Notice } from '../keeping/notice';
import type { NoticeBoard } from '../keeping/notice-board';
import { problemText } from '../keeping/problem-text';
import type { ListedShelf } from '../keeping/shelf-list';
import { writingNotice } from '../keeping/writing-notice';

/** The entries of the log: here at once, and written to the browser's database one by one. */
export interface LogBook {
  entries(): readonly LogEntry[];
  /** Puts entries in, each in the place of the one with its id. */
  put(entries: readonly LogEntry[]): void;
  /** Takes entries out; null takes out all. */
  remove(ids: readonly string[] | null): void;
  /** As a file with everything sees it. */
  readonly shelf: ListedShelf;
  dispose(): void;
}

interface Needs {
  readonly kept: KeptLog;
  readonly board: NoticeBoard;
  readonly onChange: (entries: readonly LogEntry[]) => void;
}

const NOTICE = 'log';

/** The log looks empty then, which nobody should take for lost. */
const UNREAD: Notice = {
  id: 'unread-log',
  tone: 'trouble',
  text: 'Your log could not be opened, so it looks empty; nothing of it was deleted. Allow site data for this page; it is tried again when you open it the next time.',
};

const rowOf = (entry: LogEntry): LogRow => ({ ...storableEntry(entry), id: entry.id });

/** Writes one thing after another; what could not be written waits, and goes along with what is written next. */
const createWriter = (kept: KeptLog, board: NoticeBoard) => {
  const waiting = new Map<string, LogEntry>();
  let last: Promise<unknown> = Promise.resolve();
  const tell = (writing: Writing): void => {
    const notice = writingNotice(writing);
    if (notice === null) board.dismiss(NOTICE);
    else board.post({ ...notice, id: NOTICE, text: `Your log: ${notice.text}` });
  };
  const flush = async (): Promise<void> => {
    const entries = [...waiting.values()];
    if (entries.length === 0) return;
    waiting.clear();
    const writing = await kept.put(entries.map(rowOf));
    if (writing.kind !== 'written')
      for (const entry of entries) if (!waiting.has(entry.id)) waiting.set(entry.id, entry);
    tell(writing);
  };
  const then = (act: () => Promise<void>): void => {
    last = last.then(act);
  };
  return {
    put: (entries: readonly LogEntry[]): void => {
      for (const entry of entries) waiting.set(entry.id, entry);
      then(flush);
    },
    remove: (ids: readonly string[] | null): void => {
      if (ids === null) waiting.clear();
      else for (const id of ids) waiting.delete(id);
      then(async () => tell(await kept.remove(ids)));
    },
  };
};

interface Shelved {
  readonly entries: () => readonly LogEntry[];
  readonly has: (id: string) => boolean;
  readonly put: (entries: readonly LogEntry[]) => void;
  readonly readAll: (rows: readonly unknown[], notice: string) => readonly LogEntry[];
}

/** The log as a shelf: an entry that is here stays as it is. */
const shelfOf = ({ entries, has, put, readAll }: Shelved): ListedShelf => ({
  noun: 'log entry',
  items: () => entries().map(storableEntry),
  takeIn: (things) => {
    const read = readAll(things, 'unread-log-file');
    const added = read.filter(({ id }) => !has(id));
    if (added.length > 0) put(added);
    return {
      added: added.length,
      known: read.length - added.length,
      copied: 0,
      newIds: new Map(),
      problems: [],
    };
  },
});

/** Opens the log: what is kept comes a moment later, beside what was written in the meantime. */
export const openLogBook = ({ kept, board, onChange }: Needs): LogBook => {
  let entries = new Map<string, LogEntry>();
  let sorted: readonly LogEntry[] = [];
  const writer = createWriter(kept, board);
  /** Taken out before what is kept was read; null once it is here. */
  let gone: Set<string> | null = new Set();
  const show = (): void => {
    sorted = [...entries.values()].sort((a, b) => a.began - b.began || a.id.localeCompare(b.id));
    onChange(sorted);
  };
  const readAll = (rows: readonly unknown[], id: string): readonly LogEntry[] => {
    const read = rows.map(readEntry);
    const text = problemText(read.flatMap((each) => each.problems));
    if (text !== '') board.post({ id, tone: 'trouble', text });
    return read.flatMap(({ item }) => item ?? []);
  };
  const take = async (): Promise<void> => {
    const reading = await kept.read();
    if (reading.kind === 'rows') {
      const read = readAll(reading.rows, 'unread-log').filter(({ id }) => !gone?.has(id));
      entries = new Map([...read.map((entry) => [entry.id, entry] as const), ...entries]);
    } else board.post(UNREAD);
    gone = null;
    show();
  };
  const drop = (ids: readonly string[] | null): void => {
    for (const id of ids ?? [...entries.keys()]) {
      entries.delete(id);
      gone?.add(id);
    }
  };
  const put = (more: readonly LogEntry[]): void => {
    for (const entry of more) entries.set(entry.id, entry);
    writer.put(more);
    show();
  };
  const leave = kept.onChangedElsewhere(({ put: rows, removed }) => {
    drop(removed);
    for (const entry of rows.flatMap((row) => readEntry(row).item ?? [])) entries.set(entry.id, entry);
    show();
  });
  void take();
  return {
    entries: () => sorted,
    put,
    remove: (ids) => {
      drop(ids);
      writer.remove(ids);
      show();
    },
    shelf: shelfOf({ entries: () => sorted, has: (id) => entries.has(id), put, readAll }),
    dispose: leave,
  };
};
