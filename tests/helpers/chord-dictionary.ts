import { ChordType } from 'tonal';

/** First names of all chord types tonal knows, but for one that nobody writes: its `m11A` is m11♯5. */
export const DICTIONARY: readonly string[] = ChordType.all()
  .map(({ aliases }) => aliases[0] ?? '')
  .filter((name) => name !== 'm11A');
