import { counted } from '../../core/theory/wording';

/** More sentences are not read. */
const MOST = 6;

/** Sentences on what could not be read as one text: each once, and how many more there are where they are many. */
export const problemText = (sentences: readonly string[]): string => {
  const all = [...new Set(sentences)];
  const rest = all.length - MOST;
  return [
    ...all.slice(0, MOST),
    ...(rest > 0 ? [`There is more of the kind: ${counted(rest, 'sentence')} like these.`] : []),
  ].join(' ');
};
