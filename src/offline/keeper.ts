/**
 * Keeps the built program in the browser and answers for it (Service Workers, W3C Candidate Recommendation). The
 * functions are told what the browser gives a worker, so that they can be tested without one.
 */
import { type Build, type BuiltFile, needlessShelves, shelfName, sourceOf } from './built-files';

/** What the keeper needs of its surroundings. */
export interface Ground {
  readonly build: Build;
  /** Address of the page's folder, with a slash at the end. */
  readonly scope: string;
  readonly caches: Pick<CacheStorage, 'open' | 'delete' | 'keys' | 'match'>;
  readonly fetch: (request: Request) => Promise<Response>;
}

/** Keeps the whole program in the browser and answers from it, within the service worker. */
export interface Keeper {
  /** Fetches and keeps every file. Rejects, keeping nothing, when one is missing or not as it was built. */
  install(): Promise<void>;
  /** Lets go of versions that nobody needs any more. */
  tidy(): Promise<void>;
  /** The answer to a request, or `null` where the browser should ask the network itself. */
  answer(request: Request): Promise<Response> | null;
}

/** Servers may say that their answer depends on how it was asked for; the files are the same for everybody. */
const ANY_VARIANT = { ignoreVary: true };

const digestOf = async (response: Response): Promise<string> => {
  const digest = await crypto.subtle.digest('SHA-256', await response.arrayBuffer());
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
};

/**
 * A file as the server sends it, headers and all: each worker file has a security policy of its own. What is not
 * exactly the built file is refused: half a file, the file of another version, the welcome page of a hotel's network.
 */
const fetchWhole = async ({ scope, fetch }: Ground, { path, digest }: BuiltFile) => {
  const url = new URL(path, scope).href;
  // What the browser has lying about is asked after: its bytes or its headers may be those of another version.
  const response = await fetch(new Request(url, { cache: 'no-cache', redirect: 'error' }));
  if (!response.ok) throw new Error(`${url} was answered with ${response.status}`);
  if ((await digestOf(response.clone())) !== digest) throw new Error(`${url} is not as it was built`);
  return { url, response };
};

/** Keeps all files of one build, or none of them, and answers for those it has. */
export const createKeeper = (ground: Ground): Keeper => {
  const { build, scope, caches, fetch } = ground;
  const shelf = shelfName(scope, build.version);
  const paths = new Set(build.files.map(({ path }) => path));

  const kept = (path: string): Promise<Response | undefined> =>
    caches.match(new URL(path, scope).href, { ...ANY_VARIANT, cacheName: shelf });

  return {
    install: async () => {
      // All are fetched before any is put away, so that a failure leaves nothing behind.
      const files = await Promise.all(build.files.map((file) => fetchWhole(ground, file)));
      await caches.delete(shelf);
      try {
        const cache = await caches.open(shelf);
        await Promise.all(files.map(({ url, response }) => cache.put(url, response)));
      } catch (error) {
        await caches.delete(shelf);
        throw error;
      }
    },
    tidy: async () => {
      const needless = needlessShelves(await caches.keys(), scope, build.version);
      await Promise.all(needless.map((name) => caches.delete(name)));
    },
    answer: (request) => {
      const { method, url, mode, headers } = request;
      const source = sourceOf({ method, url, mode, range: headers.has('range') }, scope, paths);
      if (source === null) return null;
      const found = source.from === 'kept' ? kept(source.path) : caches.match(url, ANY_VARIANT);
      return found.then((response) => response ?? fetch(request));
    },
  };
};
