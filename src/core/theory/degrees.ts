import { Note } from 'tonal';
import type { ChordTone, Degree, NoteName } from './chord';
import { pitchClassOf } from './pitch';
import { asPitchClass } from './units';

/** Semitones of the plain (major or perfect) step of each number, 1–13. */
const PLAIN_STEPS: readonly number[] = [0, 2, 4, 5, 7, 9, 11, 12, 14, 16, 17, 19, 21];

const ALTERATIONS: Readonly<Record<string, number>> = { '': 0, b: -1, bb: -2, '#': 1, '##': 2 };
const SIGNS = ['bb', 'b', '', '#', '##'] as const;

/** Semitones of a degree above its root: `R` 0, `b7` 10, `9` 14. Throws RangeError when it is not a degree. */
export const semitonesOf = (degree: Degree): number => {
  if (degree === 'R') return 0;
  const [, sign, number] = /^(bb|b|##|#|)(\d{1,2})$/.exec(degree) ?? [];
  const plain = number === undefined ? undefined : PLAIN_STEPS[Number(number) - 1];
  const alteration = sign === undefined ? undefined : ALTERATIONS[sign];
  if (plain === undefined || alteration === undefined) throw new RangeError(`Not a degree: "${degree}"`);
  return plain + alteration;
};

const intervalOf = (degree: Degree): string => {
  const semitones = semitonesOf(degree);
  const number = degree === 'R' ? 1 : Number(degree.replace(/\D/g, ''));
  const alteration = semitones - (PLAIN_STEPS[number - 1] ?? 0);
  const perfect = [1, 4, 5, 8, 11, 12].includes(number);
  const names = perfect ? ['dd', 'd', 'P', 'A', 'AA'] : ['d', 'm', 'M', 'A', 'AA'];
  return `${number}${names[alteration + 2]}`;
};

const workOut = (root: NoteName, degree: Degree): ChordTone => {
  const name = Note.transpose(root, intervalOf(degree));
  return {
    degree,
    pitchClass: asPitchClass(pitchClassOf(root) + semitonesOf(degree)),
    name: /###|bbb/.test(name) ? Note.simplify(name) : name,
  };
};

/** Tones worked out before: there are few roots and degrees, and every chord of a chart asks for some. */
const known = new Map<string, ChordTone>();

/**
 * The tone a degree stands for above a spelled root, spelled by letter: the `b7` of Gb is Fb. Where the letter
 * would need three accidentals, which nobody writes, the plain note stands instead.
 */
export const toneOf = (root: NoteName, degree: Degree): ChordTone => {
  const id = `${root} ${degree}`;
  const tone = known.get(id) ?? workOut(root, degree);
  known.set(id, tone);
  return tone;
};

const LETTERS = 'CDEFGAB';
/** Usual degrees by semitones, where letters would need three accidentals to say it. */
const USUAL: readonly Degree[] = ['R', 'b2', '2', 'b3', '3', '4', 'b5', '5', 'b6', '6', 'b7', '7'];

/** The degree a spelled note is above a root by its letter, 1–7: B above F is `#4`, Cb above F is `b5`. */
export const degreeBetween = (root: NoteName, name: NoteName): Degree => {
  const step = (LETTERS.indexOf(name.charAt(0)) - LETTERS.indexOf(root.charAt(0)) + 7) % 7;
  const semitones = asPitchClass(pitchClassOf(name) - pitchClassOf(root));
  const sign = SIGNS[asPitchClass(semitones - (PLAIN_STEPS[step] ?? 0) + 6) - 4];
  if (semitones === 0 || sign === undefined) return USUAL[semitones] ?? 'R';
  return `${sign}${step + 1}`;
};
