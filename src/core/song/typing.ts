/** What is typed next to what was typed just before belongs to it, so that undo takes back words and not letters. */

interface Stroke {
  readonly at: number;
  readonly inserted: string;
  readonly deleted: string;
}

/** The one place where two texts differ. */
const strokeBetween = (before: string, after: string): Stroke => {
  const shorter = Math.min(before.length, after.length);
  let at = 0;
  while (at < shorter && before[at] === after[at]) at += 1;
  let same = 0;
  while (same < shorter - at && before.at(-1 - same) === after.at(-1 - same)) same += 1;
  return {
    at,
    inserted: after.slice(at, after.length - same),
    deleted: before.slice(at, before.length - same),
  };
};

/** Where the caret belongs after a text has become another: behind what is new. */
export const endOfChange = (before: string, after: string): number => {
  const { at, inserted } = strokeBetween(before, after);
  return at + inserted.length;
};

const isSeparator = (letter: string | undefined): boolean => letter !== undefined && /[\s|]/.test(letter);

/**
 * True when the newest change goes on with the one before it: a letter typed after the last one, up to the
 * separators behind a word, or one more letter deleted at the same place.
 */
export const continuesTyping = (before: string, present: string, next: string): boolean => {
  const last = strokeBetween(before, present);
  const now = strokeBetween(present, next);
  if (now.inserted.length === 1 && now.deleted === '' && last.inserted !== '' && last.deleted === '') {
    const startsWord = isSeparator(last.inserted.at(-1)) && !isSeparator(now.inserted);
    return now.at === last.at + last.inserted.length && !startsWord;
  }
  const deleting =
    now.deleted.length === 1 && now.inserted === '' && last.deleted !== '' && last.inserted === '';
  return deleting && (now.at === last.at - 1 || now.at === last.at);
};
