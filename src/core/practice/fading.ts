/**
 * Playing from memory: what is shown of a chord fades chorus by chorus. Recalling beats reading again (transfer d = 0.40:
 * Psychological Bulletin 144(7), 2018, p. 710).
 */
import { createRandom, seedFrom } from '../theory/random';
import type { ChorusOutcome } from './tempo-ladder';

/** What is hidden: nothing, one tone of each chord, all of them with the map, the chord's name as well. */
export const FADES = ['nothing', 'one tone', 'all tones', 'the name too'] as const;
export type Fade = (typeof FADES)[number];

const at = (index: number): Fade => FADES[Math.max(0, Math.min(FADES.length - 1, index))] ?? 'nothing';

/** What is hidden in the chorus after one: a little more, or after trouble a little less. */
export const fadeAfter = (fade: Fade, outcome: ChorusOutcome): Fade =>
  at(FADES.indexOf(fade) + (outcome === 'trouble' ? -1 : 1));

/** Which tone of a chord is hidden first in a chorus: 0 the root, 1 the third, 2 the fifth, which every chord has. */
export const hiddenTone = (seed: number, chorus: number): number =>
  Math.floor(createRandom(seedFrom(seed, 'fade', chorus))() * 3);

/** What is hidden, said to the player. */
export const FADE_WORDS: Readonly<Record<Fade, string>> = {
  nothing: 'All is shown. From the next chorus on a little of it goes.',
  'one tone': 'One tone of each chord is hidden.',
  'all tones': 'The tones and the map are hidden.',
  'the name too': 'The tones, the map and the name of the chord are hidden.',
};
