/** Phrases of a library in one file, to be passed on. */

import { type KeptPhrase, parseKeptPhrase } from './kept-phrase';

/** What the file says it is. */
const KIND = 'combshed phrases';

/** The longest file that is read, in UTF-16 units, and the most phrases of it. */
const LONGEST = 5_000_000;
const MOST = 2000;

/** Phrases as the text of a file. */
export const phrasesText = (phrases: readonly KeptPhrase[]): string =>
  `${JSON.stringify({ kind: KIND, version: 1, phrases }, null, 1)}\n`;

/** What a file held: phrases, and for each piece that was refused or mended a sentence. */
export interface ReadPhrases {
  readonly items: readonly KeptPhrase[];
  readonly problems: readonly string[];
}

const refused = (why: string): ReadPhrases => ({ items: [], problems: [why] });

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const parseJson = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

const nameOf = (value: unknown): string =>
  isRecord(value) && typeof value.name === 'string' && value.name.trim() !== ''
    ? ` (“${value.name.trim().slice(0, 40)}”)`
    : '';

/**
 * Reads a file of phrases, piece by piece: what cannot be used is left out with its number and name, the rest is
 * taken. Never throws on any text.
 */
export const readPhrasesText = (text: string): ReadPhrases => {
  if (text.length > LONGEST)
    return refused('This file has more than 5 MB, more than any library; nothing was read.');
  const value = parseJson(text);
  if (value === undefined) return refused('This file is damaged or none of this program: it is not JSON.');
  if (!isRecord(value) || value.kind !== KIND || !Array.isArray(value.phrases))
    return refused(
      'This file holds no phrases of this program. A file of everything is opened under Take away.',
    );
  const given: readonly unknown[] = value.phrases;
  const problems: string[] = [];
  const items = given.slice(0, MOST).flatMap((each, i): readonly KeptPhrase[] => {
    const { item, problems: mended } = parseKeptPhrase(each);
    if (item === null) {
      problems.push(
        `Phrase ${i + 1} of ${given.length}${nameOf(each)} has no notes that can be read: left out.`,
      );
      return [];
    }
    problems.push(...mended);
    return [item];
  });
  if (given.length > MOST) problems.push(`Of ${given.length} phrases the first ${MOST} were read.`);
  return { items, problems };
};
