import type { Register } from '../harp/reach';
import type { Degree } from '../theory/chord';
import type { FitChord, FitSound } from './fit';
import { withoutDetours } from './tone-sounds';

/** Tones a line can rest on: root, third and fifth of the chord (common practice, no source). */
const RESTING: ReadonlySet<Degree> = new Set(['R', '3', 'b3', '5', 'b5', '#5']);

/** Whether a chord tone is safe to rest on; the others lean on to somewhere. */
export const isSafe = (degree: Degree): boolean => RESTING.has(degree);

/** What can be played over a chord, without the names of degrees. */
export interface PlainSounds {
  /** Sounds in reach that can be held for as long as the chord lasts, lowest first. */
  readonly safe: readonly FitSound[];
  /** Sounds in reach that want to move on: sevenths, added tones, and the key's blue notes. Lowest first. */
  readonly leans: readonly FitSound[];
}

/** The sounds in reach by what a player can do with them, detours left out. */
export const plainSounds = ({ sounds, colours }: Pick<FitChord, 'sounds' | 'colours'>): PlainSounds => {
  const leaning = [
    ...sounds.filter(({ degree }) => !isSafe(degree)),
    ...colours.filter(({ role }) => role === 'blue'),
  ];
  return {
    safe: withoutDetours(sounds.filter(({ degree }) => isSafe(degree))),
    leans: withoutDetours(leaning).toSorted((a, b) => a.pitch - b.pitch),
  };
};

/** Sounds octave by octave of the harp. */
export const byRegister = (sounds: readonly FitSound[]): Readonly<Record<Register, readonly FitSound[]>> => {
  const of = (register: Register) => sounds.filter((sound) => sound.register === register);
  return { low: of('low'), middle: of('middle'), high: of('high') };
};
