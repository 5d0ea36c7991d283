import type { Sound } from '../harp/harp';
import { REGISTERS, type Register } from '../harp/reach';
import { spokenHole } from '../harp/tab';
import type { Chord, ChordTone, Degree, NoteName } from '../theory/chord';
import { ENGLISH } from '../theory/note-names';
import { listed } from '../theory/wording';

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
  /**
   * By its note, with glyphs and without a full stop: `No F♯ between holes 2 and 9, except 5 overblow`. Gaps of one
   * tone in neighbouring octaves have one sentence.
   */
  readonly sentence: string;
}

interface GapSpec {
  readonly chord: Chord;
  readonly sounds: readonly GapSound[];
  readonly beyond: readonly GapSound[];
}

/** The sounds of one tone on both sides of a gap, those next to it first, and those that would fill it. */
interface Surroundings {
  readonly below: readonly GapSound[];
  readonly above: readonly GapSound[];
  readonly fillers: readonly GapSound[];
}

const surroundingsOf = (
  tone: ChordTone,
  register: Register,
  { sounds, beyond }: Pick<GapSpec, 'sounds' | 'beyond'>,
): Surroundings => {
  const place = REGISTERS.indexOf(register);
  const own = sounds.filter(({ degree }) => degree === tone.degree);
  const below = own
    .filter((sound) => REGISTERS.indexOf(sound.register) < place)
    .sort((a, b) => b.pitch - a.pitch || b.hole - a.hole);
  const above = own
    .filter((sound) => REGISTERS.indexOf(sound.register) > place)
    .sort((a, b) => a.pitch - b.pitch || a.hole - b.hole);
  const floor = below[0]?.pitch ?? Number.NEGATIVE_INFINITY;
  const ceiling = above[0]?.pitch ?? Number.POSITIVE_INFINITY;
  const fillers = beyond.filter(
    ({ degree, pitch }) => degree === tone.degree && pitch > floor && pitch < ceiling,
  );
  return { below, above, fillers };
};

/**
 * Where a tone is missing. Holes say it wherever the layout rises from hole to hole there; where it does not, the
 * sounds themselves do.
 */
const whereWords = ({ below, above, fillers }: Surroundings): string => {
  const [under] = below;
  const [over] = above;
  const low = under?.hole ?? 0;
  const high = over?.hole ?? Number.POSITIVE_INFINITY;
  const rises =
    below.every(({ hole }) => hole <= low) &&
    above.every(({ hole }) => hole >= high) &&
    fillers.every(({ hole }) => hole > low && hole < high) &&
    low < high;
  if (under && over) {
    return rises
      ? ` between holes ${low} and ${high}`
      : ` between ${spokenHole(under)} and ${spokenHole(over)}`;
  }
  if (under) return rises ? ` above hole ${low}` : ` higher than ${spokenHole(under)}`;
  if (over) return rises ? ` below hole ${high}` : ` lower than ${spokenHole(over)}`;
  return '';
};

const sentenceOf = (name: NoteName, surroundings: Surroundings): string => {
  const { below, above, fillers } = surroundings;
  const lacking = `No ${ENGLISH.note(name)}${whereWords(surroundings)}`;
  if (fillers.length > 0) return `${lacking}, except ${listed(fillers.map(spokenHole))}`;
  return below.length + above.length > 0 ? lacking : `${lacking} on this harp`;
};

/** The chord tones missing in each octave of the harp, low octave first, root first. */
export const findGaps = ({ chord, sounds, beyond }: GapSpec): readonly Gap[] =>
  REGISTERS.flatMap((register) =>
    chord.tones.flatMap((tone) => {
      const gives = (sound: GapSound): boolean => sound.degree === tone.degree && sound.register === register;
      if (sounds.some(gives)) return [];
      const fillers = beyond.filter(gives);
      const { degree, name } = tone;
      const sentence = sentenceOf(name, surroundingsOf(tone, register, { sounds, beyond }));
      return [{ degree, name, register, with: fillers.map(({ id }) => id), sentence }];
    }),
  );
