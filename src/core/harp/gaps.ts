import type { Chord, Degree, NoteName } from '../theory/chord';
import type { Sound } from './harp';
import { REGISTERS, type Register } from './reach';

/** A sound as gaps need it; `FitSound` is one. */
interface GapSound extends Sound {
  readonly id: string;
  readonly degree: Degree;
  readonly register: Register;
}

/** A chord tone that no reachable sound gives in one octave of the harp. */
export interface Gap {
  readonly degree: Degree;
  readonly name: NoteName;
  readonly register: Register;
  /** Ids of sounds that would fill it with more technique; empty where the harp has none. */
  readonly with: readonly string[];
  /** In plain words, as `gapSentence` writes it. */
  readonly sentence: string;
}

interface GapSpec {
  readonly chord: Chord;
  readonly sounds: readonly GapSound[];
  readonly beyond: readonly GapSound[];
}

const techniqueName = ({ technique, breath }: Sound): string => {
  if (technique === 'overbend') return breath === 'blow' ? 'an overblow' : 'an overdraw';
  return technique === 'bend' ? `a ${breath} bend` : `the ${breath} note`;
};

/** How a filling sound is written where no tab style is chosen: its hole, with a mark per semitone of bend. */
const plainly = ({ hole, bend }: Sound): string => hole + "'".repeat(bend);

/**
 * A gap in plain words, ASCII accidentals: `no 3 of D7 in the middle octave without an overblow (5)`.
 * @param fillers the sounds that would fill it, @param write how such a sound is written.
 */
export const gapSentence = (
  chord: Chord,
  { degree, register }: Pick<Gap, 'degree' | 'register'>,
  fillers: readonly Sound[],
  write: (sound: Sound) => string = plainly,
): string => {
  const lacking = `no ${degree === 'R' ? 'root' : degree} of ${chord.symbol} in the ${register} octave`;
  const kinds = [...new Set(fillers.map(techniqueName))];
  if (kinds.length === 0) return `${lacking} of this harp`;
  const ways = kinds.map((kind) => {
    const sounds = fillers.filter((sound) => techniqueName(sound) === kind);
    return `${kind} (${sounds.map(write).join(', ')})`;
  });
  return `${lacking} without ${ways.join(' or ')}`;
};

/** The chord tones missing in each octave of the harp, low octave first, root first. */
export const findGaps = ({ chord, sounds, beyond }: GapSpec): readonly Gap[] =>
  REGISTERS.flatMap((register) =>
    chord.tones.flatMap((tone) => {
      const gives = (sound: GapSound): boolean => sound.degree === tone.degree && sound.register === register;
      if (sounds.some(gives)) return [];
      const fillers = beyond.filter(gives);
      const { degree, name } = tone;
      const sentence = gapSentence(chord, { degree, register }, fillers);
      return [{ degree, name, register, with: fillers.map(({ id }) => id), sentence }];
    }),
  );
