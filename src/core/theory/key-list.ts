import { isNoteName, pitchClassOf } from './pitch';
import type { PitchClass } from './units';

const LONGEST_LIST = 48;

/**
 * Reads keys as a player types them: `G, C F♯ bb`.
 * @returns the keys, or a sentence that says what was wrong.
 */
export const readKeyList = (text: string): readonly PitchClass[] | string => {
  const words = text.split(/[\s,;|]+/).filter((word) => word !== '');
  if (words.length === 0) return 'Type at least one key, for example G C F.';
  if (words.length > LONGEST_LIST) return `That is ${words.length} keys; the list holds ${LONGEST_LIST}.`;
  const names = words.map(
    (word) => word.charAt(0).toUpperCase() + word.slice(1).replace('♭', 'b').replace('♯', '#'),
  );
  const stranger = words.find((_, i) => !isNoteName(names[i] ?? ''));
  if (stranger !== undefined)
    return `“${stranger}” is not a key. Type letters A to G with b or #, for example Bb.`;
  return names.map(pitchClassOf);
};
