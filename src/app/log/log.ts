import type { LogEntry, PhraseSum } from '../../core/log/log-entry';
import { logCsv, logJson } from '../../core/log/log-files';
import type { KeptLog } from '../../storage/kept-log';
import type { FileSaver } from '../../storage/save-file';
import type { Join } from '../song/feature';
import { type LogBook, openLogBook } from './log-book';
import { factsOf } from './log-facts';
import type { LogReads, LogStand, LogState } from './log-state';
import { createLogWriter } from './log-writer';
import type { WallClock } from './wall-clock';

/** What the log stands on. */
export interface LogDevice {
  readonly kept: KeptLog;
  readonly saver: FileSaver;
  readonly clock: WallClock;
}

/** What the page can ask for about the log. */
export interface LogCommands {
  /** Deletes entries; null deletes all. */
  dropLog(ids: readonly string[] | null): void;
  /** Brings back what was deleted last. */
  restoreLog(): void;
  /** Finds out what day it is, for pictures that end today. */
  readDay(): void;
  /** Writes down how a drill of naming went. */
  noteDrill(sum: PhraseSum): void;
  /** Hands the log over as a file. Returns what to tell the player. */
  saveLog(kind: 'json' | 'csv'): Promise<string>;
}

const createCommands = (
  { store, newSeed }: LogStand,
  book: LogBook,
  { saver, clock }: LogDevice,
): LogCommands => {
  const show = (dropped: readonly LogEntry[]): void =>
    store.setState(({ log }) => ({ log: { ...log, dropped } }));
  return {
    dropLog: (ids) => {
      const dropped = book.entries().filter(({ id }) => ids === null || ids.includes(id));
      book.remove(ids);
      show(dropped);
    },
    restoreLog: () => {
      book.put(store.getState().log.dropped);
      show([]);
    },
    readDay: () => store.setState(({ log }) => ({ log: { ...log, today: clock.day() } })),
    noteDrill: (sum) => {
      if (!store.getState().settings.keepLog) return;
      const began = clock.now();
      book.put([
        {
          ...factsOf(store.getState(), 'drill'),
          ...{ id: `log-${began}-${newSeed()}`, began, day: clock.day(), choruses: 0, seconds: 0 },
          ...{ laps: [], heard: null, bends: [], phrases: [sum] },
        },
      ]);
    },
    saveLog: async (kind) => {
      const name = `combshed-log.${kind}`;
      const entries = book.entries();
      const text = kind === 'json' ? logJson(entries) : logCsv(entries);
      const type = kind === 'json' ? 'application/json' : 'text/csv';
      const writing = await saver.give(name, type, new TextEncoder().encode(text));
      return writing.kind === 'written'
        ? `Handed over as ${name}.`
        : 'The file could not be made: this browser gave no room for it.';
    },
  };
};

const WITHOUT: LogCommands = {
  dropLog: () => undefined,
  restoreLog: () => undefined,
  readDay: () => undefined,
  noteDrill: () => undefined,
  saveLog: async () => 'Nothing is kept here that could be saved.',
};

/** The log that writes itself: what is played, and what is heard of it. */
export const joinLog: Join<LogState, LogCommands, LogDevice | undefined, LogReads> = (stand, device) => {
  if (device === undefined) return { commands: WITHOUT };
  const { store, board, keeper } = stand;
  const book = openLogBook({
    kept: device.kept,
    board,
    onChange: (entries) => store.setState(({ log }) => ({ log: { ...log, entries } })),
  });
  const leaveList = keeper.shelves.add('log', book.shelf);
  const writer = createLogWriter(stand, device.clock, (entry) => book.put([entry]));
  const commands = createCommands(stand, book, device);
  return {
    commands: {
      ...commands,
      dropLog: (ids) => {
        writer.forget(ids);
        commands.dropLog(ids);
      },
    },
    onPlayhead: writer.onPlayhead,
    onStatus: writer.onStatus,
    dispose: () => {
      writer.dispose();
      leaveList();
      book.dispose();
    },
  };
};
