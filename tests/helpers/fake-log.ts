import type { LogDevice } from '../../src/app/log/log';
import { asEpochMs } from '../../src/core/theory/units';
import type { KeptLog, LogChange, LogRow } from '../../src/storage/kept-log';
import type { Writing } from '../../src/storage/kept-values';
import { createFakeTakeAway } from './fake-take-away';

/** A log in memory, which tabs may share. */
export interface FakeKeptLog extends KeptLog {
  readonly rows: Map<string, LogRow>;
  /** Answers every writing while set. */
  refuse: Writing | null;
  /** Another tab tells. */
  tell(change: LogChange): void;
}

/** An empty log in memory. */
export const createFakeKeptLog = (): FakeKeptLog => {
  const listeners = new Set<(change: LogChange) => void>();
  const rows = new Map<string, LogRow>();
  const write = (act: () => void): Writing => {
    if (kept.refuse !== null) return kept.refuse;
    act();
    return { kind: 'written' };
  };
  const kept: FakeKeptLog = {
    rows,
    refuse: null,
    tell: (change) => {
      for (const listener of listeners) listener(change);
    },
    read: async () => ({ kind: 'rows', rows: [...rows.values()] }),
    put: async (more) => write(() => more.forEach((row) => void rows.set(row.id, row))),
    remove: async (ids) => write(() => (ids ?? [...rows.keys()]).forEach((id) => void rows.delete(id))),
    onChangedElsewhere: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  return kept;
};

/** What the log stands on, with time that is moved by hand. */
export const createFakeLog = (kept: FakeKeptLog = createFakeKeptLog()) => {
  let now = Date.UTC(2026, 10, 25, 18, 0, 0);
  const { saver, files } = createFakeTakeAway();
  const device: LogDevice = {
    kept,
    saver,
    clock: { now: () => asEpochMs(now), day: () => new Date(now).toISOString().slice(0, 10) },
  };
  return {
    device,
    kept,
    files,
    /** Lets so many seconds go by. */
    wait: (seconds: number): void => {
      now += seconds * 1000;
    },
  };
};
