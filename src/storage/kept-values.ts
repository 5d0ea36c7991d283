/** The part of the browser's storage that is needed here; tests hand in their own. */
export type StorageArea = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

export type Reading =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'value'; readonly value: unknown; readonly raw: string }
  /** Something is there that is not JSON. */
  | { readonly kind: 'unreadable'; readonly raw: string }
  /** The browser does not let this page keep anything. */
  | { readonly kind: 'refused'; readonly detail: string };

export type Writing =
  | { readonly kind: 'written' }
  | { readonly kind: 'full' }
  | { readonly kind: 'refused'; readonly detail: string };

/** Named JSON values kept in the browser. No method throws. */
export interface KeptValues {
  read(name: string): Reading;
  write(name: string, value: unknown): Writing;
  /** Puts text that could not be read aside under a name of its own, once per different text. */
  setAside(name: string, raw: string): Writing;
  /** Calls back when another tab wrote the value. Returns the unsubscriber. */
  onWrittenElsewhere(name: string, listener: (value: unknown) => void): () => void;
}

const PREFIX = 'combshed.';
/** Copies kept of unreadable values, per name: enough to recover, few enough not to fill the storage. */
const COPIES = 5;

const detailOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

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
    return isFull(error) ? { kind: 'full' } : { kind: 'refused', detail: detailOf(error) };
  }
};

const copiesOf = (area: StorageArea, name: string): string[] => {
  const prefix = `${PREFIX}${name}.unread.`;
  return Array.from({ length: area.length }, (_, i) => area.key(i) ?? '')
    .filter((key) => key.startsWith(prefix))
    .sort((a, b) => Number(a.slice(prefix.length)) - Number(b.slice(prefix.length)));
};

/**
 * @param openArea gives the storage, or throws where the browser refuses it (private windows, blocked cookies).
 * @param events where `storage` events arrive.
 */
export const createKeptValues = (
  openArea: () => StorageArea,
  events: Pick<EventTarget, 'addEventListener' | 'removeEventListener'>,
): KeptValues => {
  const withArea = <T>(use: (area: StorageArea) => T): T | { kind: 'refused'; detail: string } => {
    try {
      return use(openArea());
    } catch (error) {
      return { kind: 'refused', detail: detailOf(error) };
    }
  };
  return {
    read: (name) =>
      withArea<Reading>((area) => {
        const raw = area.getItem(PREFIX + name);
        return raw === null ? { kind: 'nothing' } : parse(raw);
      }),
    write: (name, value) => withArea<Writing>((area) => put(area, PREFIX + name, JSON.stringify(value))),
    setAside: (name, raw) =>
      withArea<Writing>((area) => {
        const copies = copiesOf(area, name);
        if (copies.some((key) => area.getItem(key) === raw)) return { kind: 'written' };
        const newest = copies.at(-1);
        const number = newest === undefined ? 1 : Number(newest.slice(newest.lastIndexOf('.') + 1)) + 1;
        for (const key of copies.slice(0, Math.max(0, copies.length - COPIES + 1))) area.removeItem(key);
        return put(area, `${PREFIX}${name}.unread.${number}`, raw);
      }),
    onWrittenElsewhere: (name, listener) => {
      const onStorage = (event: Event): void => {
        if (!(event instanceof StorageEvent) || event.key !== PREFIX + name || event.newValue === null)
          return;
        const reading = parse(event.newValue);
        if (reading.kind === 'value') listener(reading.value);
      };
      events.addEventListener('storage', onStorage);
      return () => events.removeEventListener('storage', onStorage);
    },
  };
};
