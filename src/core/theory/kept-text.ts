/** Letters of a name, as it is typed and kept. */
export const LONGEST_NAME = 80;

/** The beginning of a text, at most so many letters, and never half of a character that takes two (an emoji). */
export const cutText = (text: string, most: number): string =>
  text.slice(0, most).replace(/[\uD800-\uDBFF]$/, '');

/** A text from outside as it is kept: cut to length, without space around it; empty where it is no text. */
export const keptText = (value: unknown, most = LONGEST_NAME): string =>
  typeof value === 'string' ? cutText(value.trim(), most).trim() : '';

const withoutCommas = (value: unknown): unknown =>
  typeof value === 'string' ? value.replaceAll(',', ' ') : value;

/** How many tags an item of a library has, and letters a tag. */
export const TAG_LIMITS = { tags: 12, tag: 30 } as const;

/** Tags from outside: each once, trimmed, cut to length, none empty, and without the commas that part them when typed. */
export const keptTags = (values: readonly unknown[]): readonly string[] =>
  [...new Set(values.map((value) => keptText(withoutCommas(value), TAG_LIMITS.tag)))]
    .filter((tag) => tag !== '')
    .slice(0, TAG_LIMITS.tags);

/** Tags as they are typed, apart by commas. */
export const tagsOf = (line: string): readonly string[] => keptTags(line.split(','));
