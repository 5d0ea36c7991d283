import * as v from 'valibot';
import { isRecord } from '../theory/is-record';
import { cutText } from '../theory/kept-text';
import { asEpochMs } from '../theory/units';
import { LOG_KINDS, type LogEntry } from './log-entry';

/** The version written with every entry; a larger one comes from a newer program. */
export const LOG_VERSION = 1;

const count = v.pipe(v.number(), v.integer(), v.minValue(0), v.maxValue(1_000_000));
const figure = v.pipe(v.number(), v.finite());
const seconds = v.pipe(v.number(), v.minValue(0), v.maxValue(86_400));
const tempo = v.pipe(v.number(), v.minValue(1), v.maxValue(1000));
/** Degrees alone: other names (`constructor`) would be found in any object. */
const degree = v.pipe(v.string(), v.regex(/^(?:R|[b#]{0,2}\d{1,2})$/));

/** More of one kind are in no entry of this program. */
const MOST_LISTED = 200;

type Reader<Value> = v.GenericSchema<unknown, Value>;

/** How fields are read that an entry can do without. */
interface Leniency {
  readonly or: <Value>(schema: Reader<Value>, usual: Value) => Reader<Value>;
  readonly text: (most: number) => Reader<string>;
  readonly list: <Item>(schema: Reader<Item>) => Reader<readonly Item[]>;
  readonly counts: Reader<Record<string, number>>;
}

/** What is there has to be in order. */
const STRICT: Leniency = {
  or: (schema, usual) => v.optional(schema, usual as never),
  text: (most) => v.pipe(v.string(), v.maxLength(most)),
  list: (schema) => v.pipe(v.array(schema), v.maxLength(MOST_LISTED)),
  counts: v.record(degree, count),
};

const readable = <Value>(schema: Reader<Value>, value: unknown): readonly Value[] => {
  const read = v.safeParse(schema, value);
  return read.success ? [read.output] : [];
};

/** What can be read is kept. */
const LENIENT: Leniency = {
  or: (schema, usual) => v.fallback(schema, usual),
  text: (most) =>
    v.pipe(
      v.string(),
      v.transform((value) => cutText(value, most)),
    ),
  list: (schema) =>
    v.pipe(
      v.array(v.unknown()),
      v.transform((items) => items.slice(0, MOST_LISTED).flatMap((item) => readable(schema, item))),
    ),
  counts: v.pipe(
    v.record(v.string(), v.unknown()),
    v.transform(
      (counts) =>
        Object.fromEntries(
          Object.entries(counts).filter(([name, value]) => v.is(degree, name) && v.is(count, value)),
        ) as Record<string, number>,
    ),
  ),
};

const LAP = v.object({ tempo, choruses: count, clean: count, judged: count });
const BEND = v.object({
  sound: v.pipe(v.string(), v.regex(/^\d{1,2}O?[BD]'{0,9}$/)),
  tries: count,
  hits: count,
  measured: count,
  cents: figure,
  squares: v.pipe(figure, v.minValue(0)),
});

const entrySchema = ({ or, text, list, counts }: Leniency) => {
  const heard = v.object({
    ...{ notes: count, chord: count, blue: count, scale: count },
    functions: or(counts, {}),
    timed: or(count, 0),
    early: or(count, 0),
    late: or(count, 0),
  });
  return v.object({
    id: v.pipe(v.string(), v.minLength(1), v.maxLength(120)),
    kind: v.picklist(LOG_KINDS),
    began: v.pipe(
      v.number(),
      v.minValue(0),
      v.maxValue(8.64e15),
      v.transform((value) => asEpochMs(value)),
    ),
    day: v.pipe(v.string(), v.regex(/^\d{4}-\d\d-\d\d$/)),
    song: or(text(200), ''),
    form: or(text(200), ''),
    key: or(text(20), ''),
    harp: or(text(80), ''),
    harpKind: or(text(300), ''),
    position: or(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(12)), 2),
    choruses: or(count, 0),
    seconds: or(seconds, 0),
    laps: or(list(LAP), []),
    heard: or(v.nullable(heard), null),
    bends: or(list(BEND), []),
    phrases: or(list(v.object({ name: text(120), tries: count, passed: count })), []),
  });
};

const WHOLE = entrySchema(STRICT);
const IN_PART = entrySchema(LENIENT);

/** An entry read from outside; null where it has neither id nor day. */
export interface ReadEntry {
  readonly item: LogEntry | null;
  /** Sentences for the player; empty when all was well. */
  readonly problems: readonly string[];
}

/** Reads an entry from storage or a file. Never throws; keeps every field that can be read. */
export const readEntry = (value: unknown): ReadEntry => {
  const whole = v.safeParse(WHOLE, value);
  const read = whole.success ? whole : v.safeParse(IN_PART, value);
  if (!read.success)
    return { item: null, problems: ['An entry of the log has no readable day and was left out.'] };
  const newer = isRecord(value) && typeof value.version === 'number' && value.version > LOG_VERSION;
  return {
    item: read.output,
    problems: [
      ...(newer
        ? ['An entry of the log comes from a newer version of this program; what is known here was read.']
        : []),
      ...(whole.success
        ? []
        : [`Of an entry of the log, ${read.output.day}, not all could be read; the rest of it was kept.`]),
    ],
  };
};

/** The JSON-safe form that `readEntry` reads back. */
export const storableEntry = (entry: LogEntry): Readonly<Record<string, unknown>> => ({
  version: LOG_VERSION,
  ...entry,
});
