import type { Harp } from '../harp/harp';
import { positionTitle } from '../harp/positions';
import { REGISTERS } from '../harp/reach';
import { keyName } from '../theory/pitch';
import { capital, listed } from '../theory/wording';
import type { Reached, WantedNote } from './wanted-notes';

interface AdviceFacts {
  readonly harp: Harp;
  readonly position: number;
  readonly notes: readonly WantedNote[];
  readonly reached: Reached;
}

const OCTAVE_PREFIX: Readonly<Record<string, string>> = { '-2': 'double low ', '-1': 'low ', '1': 'high ' };

/** What names a harp: an instrument, one of the case, or the one in hand. */
type NamedHarp = Pick<Harp, 'key' | 'octave' | 'tuning'>;

const plainName = ({ key, octave }: NamedHarp): string =>
  `${OCTAVE_PREFIX[String(octave)] ?? ''}${keyName(key, 'major')} harp`;

const withTuningName = (plain: string, { tuning }: NamedHarp): string =>
  tuning.id === 'richter' ? plain : `${plain}, ${tuning.name.charAt(0).toLowerCase()}${tuning.name.slice(1)}`;

/** A harp by its name on a case: `C harp`, `Low F harp`, `A harp, natural minor`. */
export const harpName = (harp: NamedHarp): string => {
  const plain = plainName(harp);
  return withTuningName(capital(plain), harp);
};

/** The same within a sentence: `a C harp`, `an F harp`, `a low F harp`. */
export const aHarp = (harp: NamedHarp): string => {
  const plain = plainName(harp);
  return withTuningName(`${/^[AEF]/.test(plain) ? 'an' : 'a'} ${plain}`, harp);
};

const toneName = ({ degree, chord }: WantedNote): string =>
  `the ${degree === 'R' ? 'root' : degree} of ${chord}`;

/** Missing notes as words: octaves of one tone together. */
const missingWords = (missing: readonly WantedNote[]): readonly string[] => {
  const tones = new Map<string, string[]>();
  for (const note of missing) {
    const name = toneName(note);
    tones.set(name, [...(tones.get(name) ?? []), note.register]);
  }
  return [...tones].map(([name, registers]) =>
    registers.length === REGISTERS.length
      ? `${name} anywhere`
      : `${name} in the ${listed(registers)} octave${registers.length > 1 ? 's' : ''}`,
  );
};

/** At most so many missing tones are named one by one. */
const NAMED_AT_MOST = 3;

const chordToneReason = (notes: readonly WantedNote[]): string => {
  const wanted = notes.filter(({ chord }) => chord !== null);
  const missing = wanted.filter(({ effort }) => effort === null);
  if (missing.length === 0) return 'every chord tone in every octave';
  const words = missingWords(missing);
  if (words.length <= NAMED_AT_MOST) return `every chord tone but ${listed(words)}`;
  const bySymbol = new Map<string, number>();
  for (const { chord } of missing) if (chord) bySymbol.set(chord, (bySymbol.get(chord) ?? 0) + 1);
  const [worst] = [...bySymbol].sort((a, b) => b[1] - a[1]);
  const had = wanted.length - missing.length;
  return `${had} of ${wanted.length} chord tones, counted octave by octave; most of those missing belong to ${worst?.[0]}`;
};

const COUNTS = ['no octave', 'one octave', 'two octaves', 'all octaves'];

const blueReason = (notes: readonly WantedNote[]): string => {
  const degrees = [...new Set(notes.flatMap(({ chord, degree }) => (chord === null ? [degree] : [])))];
  const words = degrees.map((degree) => {
    const had = notes.filter((each) => each.chord === null && each.degree === degree && each.effort !== null);
    return `${degree} in ${COUNTS[had.length] ?? `${had.length} octaves`}`;
  });
  return `blue notes: ${words.join(', ')}`;
};

const percent = (part: number): string => `${Math.round(100 * part)} %`;

/** Why a harp stands where it does, the most telling reason first. */
export const adviceReasons = ({ harp, position, notes, reached }: AdviceFacts): readonly string[] => [
  `${harpName(harp)}, ${positionTitle(position)}: ${chordToneReason(notes)}`,
  `guide tones: ${percent(reached.guideTones)} in reach`,
  blueReason(notes),
  `${percent(reached.easy)} of the chord tones without bend or overbend`,
];
