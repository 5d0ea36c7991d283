/** Words in a row as a sentence has them: `a`, `a and b`, `a, b and c`. */
export const allOf = (words: readonly string[]): string =>
  words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
