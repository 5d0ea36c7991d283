/** A file of the built program. */
export interface BuiltFile {
  /** Relative to the page's address, encoded as in an address; the page itself is the empty path. */
  readonly path: string;
  /** Its SHA-256 in hexadecimal. */
  readonly digest: string;
}

/** Everything the program consists of. */
export interface Build {
  /** Differs when any file does. */
  readonly version: string;
  readonly files: readonly BuiltFile[];
}

/** What an answer is chosen by; the fields mean what they do in the Fetch standard. */
export interface Asked {
  readonly method: string;
  readonly url: string;
  readonly mode: string;
  /** Whether only a part of the file is wanted. */
  readonly range: boolean;
}

/**
 * `kept`: this file of this version. `earlier`: a part that a page of the version before may still ask for.
 * `null`: none of our business, so the browser asks the network as if nobody were between.
 */
export type Source = { readonly from: 'kept'; readonly path: string } | { readonly from: 'earlier' } | null;

/** The folder whose files carry a hash of their content in the name, so that no two versions share a name. */
const HASHED = 'assets/';

/**
 * Where the answer to a request comes from.
 * @param scope address of the page's folder, with a slash at the end
 */
export const sourceOf = (asked: Asked, scope: string, paths: ReadonlySet<string>): Source => {
  const { method, url, mode, range } = asked;
  if (method !== 'GET' || range || !url.startsWith(scope)) return null;
  const { pathname, search } = new URL(url);
  const path = pathname.slice(new URL(scope).pathname.length);
  if (mode === 'navigate') return path === '' || path === 'index.html' ? { from: 'kept', path: '' } : null;
  if (search !== '') return null;
  if (paths.has(path)) return { from: 'kept', path };
  return path.startsWith(HASHED) ? { from: 'earlier' } : null;
};

/** The name a version is kept under; pages in other folders of the same server keep theirs apart. */
export const shelfName = (scope: string, version: string): string => `${shelfPrefix(scope)}${version}`;

const shelfPrefix = (scope: string): string => `combshed ${new URL(scope).pathname} `;

/**
 * The kept versions that nobody needs once this one answers: all of this page's but its own and the one put there
 * last before it, from which a window that is still open may want a part.
 * @param names every kept name, oldest first, as the Service Workers standard lists them
 */
export const needlessShelves = (
  names: readonly string[],
  scope: string,
  version: string,
): readonly string[] => {
  const before = names
    .filter((name) => name.startsWith(shelfPrefix(scope)))
    .filter((name) => name !== shelfName(scope, version));
  return before.slice(0, -1);
};
