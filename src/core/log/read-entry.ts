import * as v from 'valibot';
import { isRecord } from '../theory/is-record';
import { cutText } from '../theory/kept-text';
import { asEpochMs } from '../theory/units';
import { LOG_KINDS, type LogEntry } from './log-entry';

/** The version written with every entry; a larger one comes from a newer program. */
export const LOG_VERSION = 1;

const text = (most: number) =>
  v.pipe(
    v.string(),
    v.transform((value) => cutText(value, most)),
  );
const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));
const figure = v.pipe(v.number(), v.finite());
const seconds = v.pipe(v.number(), v.minValue(0), v.maxValue(86_400));
const tempo = v.pipe(v.number(), v.minValue(1), v.maxValue(1000));

/** Keeps of a list what can be read. */
const listOf = <Item>(schema: v.GenericSchema<unknown, Item>) =>
  v.pipe(
    v.array(v.unknown()),
    v.transform((items): readonly Item[] =>
      items.slice(0, 200).flatMap((item) => {
        const read = v.safeParse(schema, item);
        return read.success ? [read.output] : [];
      }),
    ),
  );

const LAP = v.object({ tempo, choruses: count, clean: count, judged: count });
const BEND = v.object({
  sound: v.pipe(v.string(), v.regex(/^\d{1,2}O?[BD]'{0,9}$/)),
  tries: count,
  hits: count,
  measured: count,
  cents: figure,
  squares: v.pipe(figure, v.minValue(0)),
});
const PHRASE = v.object({ name: text(120), tries: count, passed: count });
const HEARD = v.object({
  notes: count,
  chord: count,
  blue: count,
  scale: count,
  functions: v.fallback(v.record(v.string(), count), {}),
  timed: v.fallback(count, 0),
  early: v.fallback(count, 0),
  late: v.fallback(count, 0),
});

const ENTRY = v.object({
  id: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
  kind: v.picklist(LOG_KINDS),
  began: v.pipe(
    v.number(),
    v.minValue(0),
    v.maxValue(8.64e15),
    v.transform((value) => asEpochMs(value)),
  ),
  day: v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\d$/)),
  song: v.fallback(text(200), ''),
  form: v.fallback(text(200), ''),
  key: v.fallback(text(20), ''),
  harp: v.fallback(text(80), ''),
  harpKind: v.fallback(text(300), ''),
  position: v.fallback(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(12)), 2),
  choruses: v.fallback(count, 0),
  seconds: v.fallback(seconds, 0),
  laps: v.fallback(listOf(LAP), []),
  heard: v.fallback(v.nullable(HEARD), null),
  bends: v.fallback(listOf(BEND), []),
  phrases: v.fallback(listOf(PHRASE), []),
});

/** An entry read from outside; null where it has neither id nor day. */
export interface ReadEntry {
  readonly item: LogEntry | null;
  /** Sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

/** Reads an entry from storage or a file. Never throws; keeps every field that can be read. */
export const readEntry = (value: unknown): ReadEntry => {
  const read = v.safeParse(ENTRY, value);
  if (!read.success)
    return { item: null, problems: ['An entry of the log has no readable day and was left out.'] };
  const newer = isRecord(value) && typeof value.version === 'number' && value.version > LOG_VERSION;
  return {
    item: read.output,
    problems: newer
      ? ['An entry of the log comes from a newer version of this program; what is known here was read.']
      : [],
  };
};

/** The JSON-safe form that `readEntry` reads back. */
export const storableEntry = (entry: LogEntry): Readonly<Record<string, unknown>> => ({
  version: LOG_VERSION,
  ...entry,
});
