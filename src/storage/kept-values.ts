import { messageOf } from '../core/theory/thrown';

/** The part of the browser's storage that is needed here; tests hand in their own. */
export type StorageArea = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** What the storage holds under a name. */
export type Reading =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'value'; readonly value: unknown; readonly raw: string }
  /** Something is there that is not JSON. */
  | { readonly kind: 'unreadable'; readonly raw: string }
  /** The browser does not let this page keep anything. */
  | { readonly kind: 'refused'; readonly detail: string };

/** How a change of the storage went. */
export type Writing =
  | { readonly kind: 'written' }
  | { readonly kind: 'full' }
  | { readonly kind: 'refused'; readonly detail: string };

/** Text put aside because it could not be read, or because the player started afresh. */
export interface KeptCopy {
  readonly id: string;
  /** The value it is a copy of. */
  readonly name: string;
  readonly raw: string;
}

/** Named JSON values kept in the browser. No method throws. */
export interface KeptValues {
  read(name: string): Reading;
  write(name: string, value: unknown): Writing;
  /** Puts a copy of a text aside under a name of its own, once per different text; earlier copies stay. */
  setAside(name: string, raw: string): Writing;
  /** Takes a value out of use: what was there becomes a copy. It stays in use where that fails. */
  retire(name: string): Writing;
  /** Names of all values in use, copies left out; none where the browser refuses. */
  names(): readonly string[];
  /** All copies put aside, oldest first by name; none where the browser refuses. */
  copies(): readonly KeptCopy[];
  /** Deletes a copy. */
  forgetCopy(id: string): Writing;
  /** Calls back when another tab wrote the value. Returns the unsubscriber. */
  onWrittenElsewhere(name: string, listener: (value: unknown) => void): () => void;
}

const PREFIX = 'combshed.';
/** Stands between a value's name and the number of its copy. */
const COPY = '.unread.';

const isFull = (error: unknown): boolean =>
  error instanceof DOMException && (error.name === 'QuotaExceededError' || error.code === 22);

const parse = (raw: string): Reading => {
  try {
    const value: unknown = JSON.parse(raw);
    return { kind: 'value', value, raw };
  } catch {
    return { kind: 'unreadable', raw };
  }
};

const put = (area: StorageArea, key: string, raw: string): Writing => {
  try {
    area.setItem(key, raw);
    return { kind: 'written' };
  } catch (error) {
    return isFull(error) ? { kind: 'full' } : { kind: 'refused', detail: messageOf(error) };
  }
};

const keysOf = (area: StorageArea): readonly string[] =>
  Array.from({ length: area.length }, (_, i) => area.key(i) ?? '').filter((key) => key.startsWith(PREFIX));

interface CopyKey {
  readonly key: string;
  readonly name: string;
  readonly number: number;
}

const copyKeysOf = (area: StorageArea): readonly CopyKey[] =>
  keysOf(area)
    .filter((key) => key.includes(COPY))
    .map((key) => {
      const at = key.lastIndexOf(COPY);
      return { key, name: key.slice(PREFIX.length, at), number: Number(key.slice(at + COPY.length)) };
    })
    .sort((a, b) => a.name.localeCompare(b.name) || a.number - b.number);

/** The key for one more copy of a value; `null` where one with this text is there already. */
const nextCopyKey = (area: StorageArea, name: string, raw: string): string | null => {
  const copies = copyKeysOf(area).filter((copy) => copy.name === name);
  if (copies.some(({ key }) => area.getItem(key) === raw)) return null;
  return `${PREFIX}${name}${COPY}${(copies.at(-1)?.number ?? 0) + 1}`;
};

const copyIn = (area: StorageArea, name: string, raw: string): Writing => {
  const key = nextCopyKey(area, name, raw);
  return key === null ? { kind: 'written' } : put(area, key, raw);
};

/** Moving needs no room for two: the value gives way to its copy, and comes back where that does not fit. */
const moveIn = (area: StorageArea, name: string): Writing => {
  const raw = area.getItem(PREFIX + name);
  if (raw === null) return { kind: 'written' };
  area.removeItem(PREFIX + name);
  const writing = copyIn(area, name, raw);
  if (writing.kind !== 'written') area.setItem(PREFIX + name, raw);
  return writing;
};

type Events = Pick<EventTarget, 'addEventListener' | 'removeEventListener'>;

/** One listener for all values, there while anyone wants to know: a page keeps more than ten lists. */
const hearOtherTabs = (events: Events): KeptValues['onWrittenElsewhere'] => {
  const wanted = new Set<{ readonly key: string; readonly listener: (value: unknown) => void }>();
  const onStorage = (event: Event): void => {
    if (!(event instanceof StorageEvent) || event.newValue === null) return;
    const { key, newValue } = event;
    const told = [...wanted].filter((each) => each.key === key);
    if (told.length === 0) return;
    const reading = parse(newValue);
    if (reading.kind === 'value') for (const { listener } of told) listener(reading.value);
  };
  return (name, listener) => {
    const want = { key: PREFIX + name, listener };
    if (wanted.size === 0) events.addEventListener('storage', onStorage);
    wanted.add(want);
    return () => {
      wanted.delete(want);
      if (wanted.size === 0) events.removeEventListener('storage', onStorage);
    };
  };
};

/**
 * @param openArea gives the storage, or throws where the browser refuses it (private windows, blocked cookies).
 * @param events where `storage` events arrive.
 */
export const createKeptValues = (openArea: () => StorageArea, events: Events): KeptValues => {
  const withArea = <T>(use: (area: StorageArea) => T): T | { kind: 'refused'; detail: string } => {
    try {
      return use(openArea());
    } catch (error) {
      return { kind: 'refused', detail: messageOf(error) };
    }
  };
  const listed = <T>(list: (area: StorageArea) => readonly T[]): readonly T[] => {
    const items = withArea(list);
    return 'kind' in items ? [] : items;
  };
  return {
    read: (name) =>
      withArea<Reading>((area) => {
        const raw = area.getItem(PREFIX + name);
        return raw === null ? { kind: 'nothing' } : parse(raw);
      }),
    write: (name, value) => withArea<Writing>((area) => put(area, PREFIX + name, JSON.stringify(value))),
    setAside: (name, raw) => withArea<Writing>((area) => copyIn(area, name, raw)),
    retire: (name) => withArea<Writing>((area) => moveIn(area, name)),
    names: () =>
      listed((area) =>
        keysOf(area)
          .filter((key) => !key.includes(COPY))
          .map((key) => key.slice(PREFIX.length)),
      ),
    copies: () =>
      listed((area) =>
        copyKeysOf(area).map(({ key, name }) => ({
          id: key.slice(PREFIX.length),
          name,
          raw: area.getItem(key) ?? '',
        })),
      ),
    forgetCopy: (id) =>
      withArea<Writing>((area) => {
        if (id.includes(COPY)) area.removeItem(PREFIX + id);
        return { kind: 'written' };
      }),
    onWrittenElsewhere: hearOtherTabs(events),
  };
};
