import { isRecord } from '../theory/is-record';
import { keptText } from '../theory/kept-text';
import { capital } from '../theory/wording';

/** Things of a library in one file, to be passed on. */

/** A kind of thing that is kept in a library and goes into a file with others of its kind. */
export interface LibraryKind<Item> {
  /** What one is called, and what several are: also the name of their list in the file. */
  readonly noun: string;
  readonly plural: string;
  /** What one that cannot be read lacks: `notes`. */
  readonly lacks: string;
  /** Reads one, repairing what it can and saying so. Never throws. */
  readonly parse: (value: unknown) => { readonly item: Item | null; readonly problems: readonly string[] };
}

/** What the file says it is. */
const kindOf = ({ plural }: LibraryKind<unknown>): string => `combshed ${plural}`;

/** The longest file that is read, in UTF-16 units, and the most things of it. */
const LONGEST = 5_000_000;
const MOST = 2000;

/** Things as the text of a file. */
export const libraryText = <Item>(kind: LibraryKind<Item>, items: readonly Item[]): string =>
  `${JSON.stringify({ kind: kindOf(kind), version: 1, [kind.plural]: items }, null, 1)}\n`;

/** What a file held, and for each piece that was refused or mended a sentence. */
export interface ReadLibrary<Item> {
  readonly items: readonly Item[];
  readonly problems: readonly string[];
}

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

const nameOf = (value: unknown): string =>
  isRecord(value) && typeof value.name === 'string' && value.name.trim() !== ''
    ? ` (“${keptText(value.name, 40)}”)`
    : '';

/**
 * Reads a file of things of one kind, piece by piece: what cannot be used is left out with its number and name, the rest
 * is taken. Never throws on any text.
 */
export const readLibraryText = <Item>(kind: LibraryKind<Item>, text: string): ReadLibrary<Item> => {
  const { noun, plural, lacks, parse } = kind;
  const refused = (why: string): ReadLibrary<Item> => ({ items: [], problems: [why] });
  if (text.length > LONGEST)
    return refused('This file has more than 5 MB, more than any library; nothing was read.');
  const value = parseJson(text);
  if (value === undefined) return refused('This file is damaged or none of this program: it is not JSON.');
  const given: unknown = isRecord(value) && value.kind === kindOf(kind) ? value[plural] : undefined;
  if (!Array.isArray(given))
    return refused(
      `This file holds no ${plural} of this program. A file of everything is opened under Take away.`,
    );
  const problems: string[] = [];
  const items = given.slice(0, MOST).flatMap((each: unknown, i): readonly Item[] => {
    const { item, problems: mended } = parse(each);
    if (item === null) {
      const which = `${capital(noun)} ${i + 1} of ${given.length}${nameOf(each)}`;
      problems.push(`${which} has no ${lacks} that can be read: left out.`);
      return [];
    }
    problems.push(...mended);
    return [item];
  });
  if (given.length > MOST) problems.push(`Of ${given.length} ${plural} the first ${MOST} were read.`);
  return { items, problems };
};
