import { cutText } from './kept-text';
/** A sentence or a label beginning with a large letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Words in a row as a sentence has them: `a`, `a and b`, `a, b and c`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** So many of something: `1 note`, `2 notes`; `many` where an s does not make it several. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** Something typed, to be told what is wrong with it: its beginning where it is long. */
export const quoted = (text: string): string => {
  const begun = cutText(text.trim(), 24);
  return `“${begun}${begun === text.trim() ? '' : '…'}”`;
};
