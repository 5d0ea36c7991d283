/** The part of the Cache API (Service Workers, W3C) that the keeper uses, in memory. */
export interface FakeCaches extends Pick<CacheStorage, 'open' | 'delete' | 'keys' | 'match'> {
  /** name -> address -> text. */
  readonly held: Map<string, Map<string, Response>>;
  /** Refuses to put anything away while set. */
  full: boolean;
}

const addressOf = (request: RequestInfo | URL): string =>
  request instanceof Request ? request.url : String(request);

/** Caches that hold nothing yet. */
export const createFakeCaches = (): FakeCaches => {
  const held = new Map<string, Map<string, Response>>();
  const put = async (name: string, address: string, response: Response): Promise<void> => {
    if (caches.full) throw new DOMException('no room', 'QuotaExceededError');
    held.get(name)?.set(address, response);
  };
  const caches: FakeCaches = {
    held,
    full: false,
    open: async (name) => {
      if (!held.has(name)) held.set(name, new Map());
      return {
        put: (request: RequestInfo | URL, response: Response) => put(name, addressOf(request), response),
      } as Cache;
    },
    delete: async (name) => held.delete(name),
    keys: async () => [...held.keys()],
    match: async (request, { cacheName } = {}) => {
      for (const [name, shelf] of held) {
        const found = shelf.get(addressOf(request));
        if (found && (cacheName === undefined || cacheName === name)) return found.clone();
      }
      return undefined;
    },
  };
  return caches;
};
