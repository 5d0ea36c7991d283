/** Letters of a name, as it is typed and kept. */
export const LONGEST_NAME = 80;

/**
 * The beginning of a text, at most so many letters, without halves of characters that take two (an emoji): neither of one
 * that is cut nor of any before, which no file can hold.
 */
export const cutText = (text: string, most: number): string => text.slice(0, most).replace(/\p{Cs}/gu, '');

/** A text from outside as it is kept: cut to length, without space around it; empty where it is no text. */
export const keptText = (value: unknown, most = LONGEST_NAME): string =>
  typeof value === 'string' ? cutText(value.trim(), most).trim() : '';
