import { keptText } from './kept-text';

const withoutCommas = (value: unknown): unknown =>
  typeof value === 'string' ? value.replaceAll(',', ' ') : value;

/** How many tags an item of a library has, and letters a tag. */
const TAG_LIMITS = { tags: 12, tag: 30 } as const;

/** Tags from outside: each once, trimmed, cut to length, none empty, and without the commas that part them when typed. */
export const keptTags = (values: readonly unknown[]): readonly string[] =>
  [...new Set(values.map((value) => keptText(withoutCommas(value), TAG_LIMITS.tag)))]
    .filter((tag) => tag !== '')
    .slice(0, TAG_LIMITS.tags);

/** Tags as they are typed, apart by commas. */
export const tagsOf = (line: string): readonly string[] => keptTags(line.split(','));
