import type { KeptValues, Writing } from '../../storage/kept-values';
import type { Keeper } from './keeper';
import type { Notice } from './notice';
import { problemText } from './problem-text';
import { writingNotice } from './writing-notice';

/** A value as it could be read. */
export interface ReadValue<Value> {
  readonly value: Value;
  /** What could not be read, in sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

export interface RecordOptions<Value> {
  readonly kept: KeptValues;
  readonly keeper: Keeper;
  /** Name in the storage. */
  readonly name: string;
  /** The value where nothing is kept. */
  readonly empty: Value;
  /** Reads a kept value, repairing what it can and saying so. Never throws. */
  readonly parse: (value: unknown) => ReadValue<Value>;
  /** The sentence for text that is no value at all. */
  readonly damaged: string;
  /** The JSON-safe form that `parse` reads back. */
  readonly storable: (value: Value) => unknown;
  readonly onNotice: (notice: Notice) => void;
  /** Called when all that waited is written. */
  readonly onWritten?: () => void;
  /** Called with the value after another tab has changed it. */
  readonly onElsewhere: (value: Value) => void;
}

/** A value kept in the browser that several tabs change. */
export interface KeptRecord<Value> {
  /** The value with every change made here, written or not. */
  value(): Value;
  /** The value as the storage holds it at this moment, without what waits to be written. */
  stored(): Value;
  /**
   * Makes a change on what the storage holds at that moment; it is made again until it is written.
   * @param key a later change of the same key takes the place of one that waits.
   * @returns whether it is written.
   */
  change(key: string, step: (value: Value) => Value): boolean;
  /** True while a change of this key is not written. */
  isWaiting(key: string): boolean;
  dispose(): void;
}

const COPIED = 'A copy of what was there is kept in this browser, under Help, Care.';
const NOT_COPIED =
  'There is no room for a copy of what was there, so nothing is written over it until there is. Free some site data, or see what is kept under Help, Care.';

/** Copies text that cannot be read whole before it is written over, and says so once for each thing that was wrong. */
const createProtection = <Value>({ kept, name, onNotice }: RecordOptions<Value>) => {
  let said: string | null = null;
  return (raw: string, problems: readonly string[]): Writing => {
    const writing = kept.setAside(name, raw);
    const text = `${problemText(problems)} ${writing.kind === 'written' ? COPIED : NOT_COPIED}`;
    if (text !== said) onNotice({ id: `unread-${name}`, tone: 'trouble', text });
    said = text;
    return writing;
  };
};

/**
 * Opens a kept value. Text that cannot be read whole is never written over before a copy of it lies in the storage,
 * and what another tab wrote is only changed where this tab changed something.
 */
export const openRecord = <Value>(options: RecordOptions<Value>): KeptRecord<Value> => {
  const { kept, keeper, name, parse, storable, onNotice } = options;
  const waiting = new Map<string, (value: Value) => Value>();
  let base = options.empty;
  const protect = createProtection(options);

  /** Takes over what is kept; anything but `written` means that it must not be written over. */
  const refresh = (): Writing => {
    const reading = kept.read(name);
    if (reading.kind === 'refused') return reading;
    if (reading.kind === 'unreadable') return protect(reading.raw, [options.damaged]);
    if (reading.kind === 'value') {
      const { value, problems } = parse(reading.value);
      base = value;
      if (problems.length > 0) return protect(reading.raw, problems);
    }
    return { kind: 'written' };
  };

  const value = (): Value => [...waiting.values()].reduce((so, step) => step(so), base);

  const flush = (): Writing => {
    const free = refresh();
    if (free.kind !== 'written') return free;
    const next = value();
    const writing = kept.write(name, storable(next));
    if (writing.kind !== 'written') return writing;
    base = next;
    waiting.clear();
    options.onWritten?.();
    return writing;
  };

  const first = refresh();
  if (first.kind === 'refused') {
    const notice = writingNotice(first);
    if (notice) onNotice(notice);
  }
  const unsubscribe = kept.onWrittenElsewhere(name, () => {
    refresh();
    options.onElsewhere(value());
  });

  return {
    value,
    stored: () => {
      refresh();
      return base;
    },
    change: (key, step) => {
      waiting.delete(key);
      waiting.set(key, step);
      return keeper.write(name, flush);
    },
    isWaiting: (key) => waiting.has(key),
    dispose: unsubscribe,
  };
};
