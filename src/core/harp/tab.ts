import type { Sound } from './harp';

/** How tab is written: typed signs (`4 -4 -3''`), letters (`4B 4D 3D''`) or arrows (`4↑ 4↓ 3↓//`). */
export type TabStyle = 'signs' | 'letters' | 'arrows';

/** All tab styles with a name for the player. */
export const TAB_STYLES: readonly { readonly id: TabStyle; readonly name: string }[] = [
  { id: 'signs', name: "Signs: 4 −4 −3''" },
  { id: 'letters', name: "Letters: 4B 4D 3D''" },
  { id: 'arrows', name: 'Arrows: 4↑ 4↓ 3↓//' },
];

type TabPart = Pick<Sound, 'hole' | 'breath' | 'technique' | 'bend'>;

const over = ({ technique }: TabPart): boolean => technique === 'overbend';

/**
 * A sound's stable id, ASCII, the same in every tab style: hole, `O` for overbends, `B` or `D` for the breath, one
 * `'` per semitone of bend: `4B`, `3D''`, `6OB`, `7OD`.
 */
export const soundId = (sound: TabPart): string =>
  `${sound.hole}${over(sound) ? 'O' : ''}${sound.breath === 'blow' ? 'B' : 'D'}${"'".repeat(sound.bend)}`;

/**
 * The trade's three ways of writing a sound: typed signs with `'` per semitone and `o` for overbends (common
 * practice, no source), letters (Harmonica World, December 2011, "Country harmonica tuning"), and arrows with a
 * stroke per semitone and a circle for overbends ("Harmonica For Dummies", publisher's page on tablature).
 */
const WRITERS: Readonly<Record<TabStyle, (sound: TabPart) => string>> = {
  signs: (sound) =>
    `${sound.breath === 'draw' ? '-' : ''}${sound.hole}${"'".repeat(sound.bend)}${over(sound) ? 'o' : ''}`,
  letters: soundId,
  arrows: (sound) =>
    `${sound.hole}${sound.breath === 'blow' ? '↑' : '↓'}${'/'.repeat(sound.bend)}${over(sound) ? '○' : ''}`,
};

/**
 * A sound as tab in the chosen style.
 *
 * @example
 * const bend = { hole: 4, breath: 'draw', technique: 'bend', bend: 1 };
 * tab(bend, 'signs') // "-4'"
 * tab(bend, 'letters') // "4D'"
 * tab(bend, 'arrows') // '4↓/'
 */
export const tab = (sound: TabPart, style: TabStyle): string => WRITERS[style](sound);

/** Several holes on one breath as tab: the sounds side by side in brackets. */
export const tabGroup = (sounds: readonly TabPart[], style: TabStyle): string =>
  `(${sounds.map((sound) => tab(sound, style)).join(' ')})`;

const NUMBER_WORDS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
];

/** A sound in words, for screen readers: `draw 3, bent two semitones`, `blow 6, overblow`. */
export const spokenTab = (sound: TabPart): string => {
  const plain = `${sound.breath} ${sound.hole}`;
  if (over(sound)) return `${plain}, over${sound.breath}`;
  if (sound.bend === 0) return plain;
  const count = NUMBER_WORDS[sound.bend] ?? String(sound.bend);
  return `${plain}, bent ${count} semitone${sound.bend === 1 ? '' : 's'}`;
};

/** A sound inside a sentence, hole first: `10 blow bent a semitone`, `5 overblow`, `2 draw`. */
export const spokenHole = (sound: TabPart): string => {
  const { hole, breath, bend } = sound;
  if (over(sound)) return `${hole} over${breath}`;
  if (bend === 0) return `${hole} ${breath}`;
  return `${hole} ${breath} bent ${bend === 1 ? 'a semitone' : `${NUMBER_WORDS[bend] ?? bend} semitones`}`;
};
